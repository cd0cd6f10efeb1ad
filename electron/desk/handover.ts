/** From one day to the next: what goes over, and what the lead leaves the next one to know. */
import type { ReadableLog } from '../../db/connection.ts'
import { bagTally, coolers } from '../../db/read/coolers.ts'
import { latestNote } from '../../db/read/counts.ts'
import { kitBalances } from '../../db/read/kits.ts'
import { animalsOfDay } from '../../db/read/line.ts'
import { latestDay } from '../../db/read/station.ts'
import { draft } from '../../shared-types/entry.ts'
import { granted, refused } from '../../shared-types/result.ts'
import type { DayRecord, StationRecord } from '../../shared-types/station.ts'
import type { CarryOver, KitsTomorrow } from '../../shared-types/views/close.ts'
import { kitsTomorrow } from '../station/kits-tomorrow.ts'
import { lineSettingsOf } from '../station/line-settings.ts'
import type { CommandHandlers, QueryHandlers } from './call.ts'
import { labelsLeft } from './labels-left.ts'

function kitsHere(log: ReadableLog): { inStock: number; inHands: number } {
  const balances = kitBalances(log)
  const hands = [...balances].filter(([account]) => account.startsWith('hands:'))
  return {
    inStock: balances.get('stock') ?? 0,
    inHands: hands.reduce((sum, [, count]) => sum + count, 0),
  }
}

/** What is here tonight and there tomorrow. */
export function carryOverOf(log: ReadableLog): CarryOver {
  const { inStock, inHands } = kitsHere(log)
  const here = coolers(log)
    .filter(({ state }) => state !== 'handed-off')
    .map(({ cooler, name, keeping }) => ({ cooler, name, keeping, bags: bagTally(log, cooler) }))
  return {
    kitsInStock: inStock,
    kitsInHands: inHands,
    blankLabels: labelsLeft(log).blanks,
    coolers: here.filter(({ bags }) => bags > 0),
    bagsFrozen: here
      .filter(({ keeping }) => keeping === 'frozen')
      .reduce((sum, { bags }) => sum + bags, 0),
  }
}

/** Kits for a day like the given one. */
export function kitsAfter(
  log: ReadableLog,
  { settings }: StationRecord,
  day: DayRecord | null,
): KitsTomorrow {
  const animals = day ? animalsOfDay(log, day.date) : []
  const { inStock, inHands } = kitsHere(log)
  return kitsTomorrow(lineSettingsOf(settings), {
    came: animals.length,
    joined: animals.filter(({ joinsLine }) => joinsLine).length,
    kitsHere: Math.max(0, inStock + inHands),
  })
}

export const handoverQueries = {
  handover: ({ log, station }) =>
    granted({
      note: latestNote(log),
      carry: carryOverOf(log),
      tomorrow: kitsAfter(log, station, latestDay(log)),
    }),
} satisfies Partial<QueryHandlers>

export const handoverCommands = {
  'handover.write': ({ act }, { words }) =>
    act((tx) => {
      const day = latestDay(tx)
      if (!day)
        return refused(
          'no-day-open',
          'No day was ever opened here.',
          'Open the first day (station screen).',
        )
      return granted({ drafts: [draft('handover.written', { date: day.date, words })], value: {} })
    }),
} satisfies Partial<CommandHandlers>
