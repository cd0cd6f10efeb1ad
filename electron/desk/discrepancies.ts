/** Discrepancies of a merged record: found in what it holds, settled by entries. */
import { createHash } from 'node:crypto'
import type { ReadableLog } from '../../db/connection.ts'
import { countEntries } from '../../db/log/read-entries.ts'
import { animalsBeginning } from '../../db/read/find.ts'
import { settlements } from '../../db/read/disputes.ts'
import { stationsIn } from '../../db/read/station.ts'
import { type DiscrepancyKind, settleWords } from '../../shared-types/discrepancy.ts'
import { granted, refused } from '../../shared-types/result.ts'
import type { DeskId } from '../../shared-types/sample-number.ts'
import type { DiscrepanciesView, DiscrepancyView } from '../../shared-types/views/merge.ts'
import { type Discrepancy, waysOf } from '../station/discrepancy/discrepancy.ts'
import { decideSettle, settledState, standing } from '../station/discrepancy/settling.ts'
import type { CommandHandlers, QueryHandlers } from './call.ts'
import { done } from './decided.ts'
import { discrepanciesIn } from './discrepancy-evidence.ts'
import { namesOf } from './names.ts'

/** The same evidence is the same discrepancy, at whatever office it is found. */
export function discrepancyId({ kind, evidence }: Discrepancy): string {
  return createHash('sha256')
    .update(JSON.stringify([kind, ...evidence]))
    .digest('hex')
}

interface Found {
  readonly entries: number
  readonly byId: ReadonlyMap<string, Discrepancy>
}

const foundIn = new WeakMap<ReadableLog, Found>()

/** A season takes seconds to look through: done anew only when entries other than settlements came. */
function found(log: ReadableLog): ReadonlyMap<string, Discrepancy> {
  const entries = countEntries(log) - settlements(log).length
  const before = foundIn.get(log)
  if (before?.entries === entries) return before.byId
  const byId = new Map(discrepanciesIn(log).map((each) => [discrepancyId(each), each]))
  foundIn.set(log, { entries, byId })
  return byId
}

type SettlementRow = ReturnType<typeof settlementsOf>[number]

function settlementsOf(log: ReadableLog) {
  return settlements(log).map((row) => ({ ...row, replaces: JSON.parse(row.replaces) as string[] }))
}

/** How many there are of each kind that are not settled alike, for the report of a merge. */
export function countsInDispute(log: ReadableLog): { kind: DiscrepancyKind; count: number }[] {
  const counts = new Map<DiscrepancyKind, number>()
  for (const { kind } of discrepanciesIn(log)) counts.set(kind, (counts.get(kind) ?? 0) + 1)
  return [...counts].map(([kind, count]) => ({ kind, count }))
}

function discrepanciesView(log: ReadableLog): DiscrepanciesView {
  const nameOf = namesOf(log)
  const stations = stationsIn(log)
  const rows = settlementsOf(log)
  const byId = found(log)
  const nameOfDesk = (desk: DeskId | null) =>
    stations.find((station) => station.desk === desk)?.name ?? null
  const view = (row: SettlementRow, of: Discrepancy | undefined) => settlementView(row, of, nameOf)
  return {
    discrepancies: [...byId].map(([id, each]) => {
      const stand = standing(rows.filter(({ discrepancy }) => discrepancy === id))
      return {
        id,
        kind: each.kind,
        say: each.say,
        next: each.next,
        sides: each.sides.map((side) => ({
          ...side,
          lines: [...side.lines],
          station: nameOfDesk(side.desk),
        })),
        ways: waysOf(each.kind),
        state: settledState(stand),
        settled: stand.map((row) => view(row, each)),
      }
    }),
    earlier: standing(rows.filter(({ discrepancy }) => !byId.has(discrepancy))).map((row) =>
      view(row, undefined),
    ),
    entries: countEntries(log),
    stations: stations.filter(({ office }) => !office).length,
  }
}

function settlementView(
  { choice, kind, side, words, by, desk, ms }: SettlementRow,
  of: Discrepancy | undefined,
  nameOf: (number: string) => string,
): DiscrepancyView['settled'][number] {
  const way = waysOf(kind).find((each) => each.choice === choice)?.words ?? settleWords[choice]
  const chosen = side === null ? undefined : of?.sides.find(({ key }) => key === side)
  const say = chosen ? `${way}: ${chosen.title}` : way
  return { choice, say, words, by: by ? nameOf(by) : '', desk, ms }
}

/** How many discrepancies of a record nobody has settled, or offices have settled differently. */
export function unsettledIn(log: ReadableLog): number {
  return discrepanciesView(log).discrepancies.filter(({ state }) => state !== 'settled').length
}

export const discrepancyQueries = {
  discrepancies: ({ log }) => granted(discrepanciesView(log)),
  find: ({ log }, { text }) => {
    const wanted = text.trim().toUpperCase()
    return granted({ animals: wanted === '' ? [] : animalsBeginning(log, wanted) })
  },
} satisfies Partial<QueryHandlers>

export const discrepancyCommands = {
  'discrepancy.settle': ({ act, log }, { discrepancy: id, ...settling }) => {
    const discrepancy = found(log).get(id)
    if (!discrepancy)
      return refused(
        'no-such-discrepancy',
        'This discrepancy is no longer there: the record has changed.',
        'Look at the list again.',
      )
    return act((tx) => {
      const before = settlementsOf(tx).filter((each) => each.discrepancy === id)
      return done(decideSettle(id, discrepancy, before, settling))
    })
  },
} satisfies Partial<CommandHandlers>
