/** Discrepancies of a merged record: found in what it holds, settled by entries. */
import type { ReadableLog } from '../../db/connection.ts'
import { countEntries } from '../../db/log/read-entries.ts'
import { animalsBeginning } from '../../db/read/find.ts'
import { settlements } from '../../db/read/disputes.ts'
import { stationsIn } from '../../db/read/station.ts'
import { settleWords } from '../../shared-types/discrepancy.ts'
import { granted, refused } from '../../shared-types/result.ts'
import type { DeskId } from '../../shared-types/sample-number.ts'
import type { DiscrepanciesView, DiscrepancyView } from '../../shared-types/views/merge.ts'
import { type Discrepancy, waysOf } from '../station/discrepancy/discrepancy.ts'
import { decideSettle, settledState, standing } from '../station/discrepancy/settling.ts'
import type { CommandHandlers, QueryHandlers } from './call.ts'
import { done } from './decided.ts'
import { discrepanciesFound } from './discrepancy-search.ts'
import { namesOf } from './names.ts'

type SettlementRow = ReturnType<typeof settlementsOf>[number]

function settlementsOf(log: ReadableLog) {
  return settlements(log).map((row) => ({ ...row, replaces: JSON.parse(row.replaces) as string[] }))
}

async function discrepanciesView(log: ReadableLog): Promise<DiscrepanciesView> {
  const nameOf = namesOf(log)
  const stations = stationsIn(log)
  const rows = settlementsOf(log)
  const byId = await discrepanciesFound(log)
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
        sides: each.sides.map(({ key, title, lines, desk, ms }) => ({
          key,
          title,
          lines: [...lines],
          desk,
          station: nameOfDesk(desk),
          ms,
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
export async function unsettledIn(log: ReadableLog): Promise<number> {
  const { discrepancies } = await discrepanciesView(log)
  return discrepancies.filter(({ state }) => state !== 'settled').length
}

export const discrepancyQueries = {
  discrepancies: async ({ log }) => granted(await discrepanciesView(log)),
  find: ({ log }, { text }) => {
    const wanted = text.trim().toUpperCase()
    return granted({ animals: wanted === '' ? [] : animalsBeginning(log, wanted) })
  },
} satisfies Partial<QueryHandlers>

export const discrepancyCommands = {
  'discrepancy.settle': async ({ act, log }, { discrepancy: id, ...settling }) => {
    const discrepancy = (await discrepanciesFound(log)).get(id)
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
