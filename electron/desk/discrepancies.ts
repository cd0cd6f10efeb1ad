/** Discrepancies of a merged record: found in what it holds, settled by entries. */
import type { ReadableLog } from '../../db/connection.ts'
import { countEntries } from '../../db/log/read-entries.ts'
import { animalsBeginning } from '../../db/read/find.ts'
import { settlements } from '../../db/read/disputes.ts'
import { stationsIn } from '../../db/read/station.ts'
import { settleWords } from '../../shared-types/discrepancy.ts'
import { granted, refused } from '../../shared-types/result.ts'
import type { StationRecord } from '../../shared-types/station.ts'
import type {
  DiscrepanciesView,
  DiscrepancyPage,
  DiscrepancyView,
} from '../../shared-types/views/merge.ts'
import { type Discrepancy, type Side, waysOf } from '../station/discrepancy/discrepancy.ts'
import { decideSettle, settledState, standing } from '../station/discrepancy/settling.ts'
import type { CommandHandlers, QueryHandlers } from './call.ts'
import { done } from './decided.ts'
import { discrepanciesFound } from './discrepancy-search.ts'
import { namesOf } from './names.ts'

type SettlementRow = ReturnType<typeof settlementsOf>[number]

function settlementsOf(log: ReadableLog) {
  return settlements(log).map((row) => ({ ...row, replaces: JSON.parse(row.replaces) as string[] }))
}

const order = { 'settled-differently': 0, open: 1, settled: 2 } as const

/** Every discrepancy with the settlements of it that stand, what is not settled first. */
async function discrepanciesWithState(log: ReadableLog) {
  const rows = settlementsOf(log)
  const byId = await discrepanciesFound(log)
  const settled = Map.groupBy(rows, ({ discrepancy }) => discrepancy)
  const all = [...byId].map(([id, of]) => {
    const stand = standing(settled.get(id) ?? [])
    return { id, of, stand, state: settledState(stand) }
  })
  return {
    all: all.toSorted((a, b) => order[a.state] - order[b.state]),
    gone: standing(rows.filter(({ discrepancy }) => !byId.has(discrepancy))),
  }
}

async function discrepanciesView(
  log: ReadableLog,
  { from, count }: DiscrepancyPage,
): Promise<DiscrepanciesView> {
  const { all, gone } = await discrepanciesWithState(log)
  const stations = stationsIn(log)
  const nameOf = namesOf(log)
  return {
    discrepancies: all.slice(from, from + count).map(({ id, of, stand, state }) => ({
      id,
      kind: of.kind,
      say: of.say,
      next: of.next,
      sides: of.sides.map((side) => sideView(side, stations)),
      ways: waysOf(of.kind),
      isFollowed: of.sides.some(({ holds }) => holds !== undefined),
      state,
      settled: stand.map((row) => settlementView(row, of, nameOf)),
    })),
    all: all.length,
    unsettled: all.filter(({ state }) => state !== 'settled').length,
    earlier: gone.map((row) => settlementView(row, undefined, nameOf)),
    entries: countEntries(log),
    stations: stations.filter(({ office }) => !office).length,
  }
}

function sideView({ key, title, lines, desk, ms }: Side, stations: readonly StationRecord[]) {
  const station = stations.find((each) => each.desk === desk)?.name ?? null
  return { key, title, lines: [...lines], desk, station, ms }
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
  const { all } = await discrepanciesWithState(log)
  return all.filter(({ state }) => state !== 'settled').length
}

export const discrepancyQueries = {
  discrepancies: async ({ log }, page) => granted(await discrepanciesView(log, page)),
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
