/** The close: counting, explaining, signing, and the sheet that is printed. */
import type { ReadableLog } from '../../db/connection.ts'
import { pinRecordOf } from '../../db/kept-apart.ts'
import { animalsInLine } from '../../db/read/animals.ts'
import { bagsOnBench } from '../../db/read/bags.ts'
import { bagTally, coolers } from '../../db/read/coolers.ts'
import { countsByKey, explanationsByKey } from '../../db/read/counts.ts'
import { kitBalances } from '../../db/read/kits.ts'
import { people } from '../../db/read/people.ts'
import { closeSheetOf, latestDay } from '../../db/read/station.ts'
import { countItemKey } from '../../shared-types/close.ts'
import { draft } from '../../shared-types/entry.ts'
import { kitAccountKey } from '../../shared-types/kit.ts'
import type { LocalDate } from '../../shared-types/local-date.ts'
import { granted, refused } from '../../shared-types/result.ts'
import type { CloseView } from '../../shared-types/views/close.ts'
import { checkDayOpen } from '../station/day.ts'
import { dayTotals } from '../station/figures.ts'
import {
  closeItems,
  decideClose,
  decideExplain,
  type DuskView,
  expectedAtDusk,
  needsBeforeClose,
  signedItems,
} from '../station/reconcile.ts'
import type { CommandHandlers, QueryHandlers } from './call.ts'
import { closeSheetPdf } from './close-sheet.ts'
import { done } from './decided.ts'
import { labelsLeft } from './labels-left.ts'
import { figuresOfDay } from './line.ts'
import { namesOf } from './names.ts'

/** What the log expects at dusk, and what was counted so far. */
function duskView(log: ReadableLog, date: LocalDate): DuskView {
  const balances = kitBalances(log)
  const tally = labelsLeft(log)
  return {
    totals: dayTotals(figuresOfDay(log)),
    animalsInLine: animalsInLine(log).length,
    coolers: coolers(log).map((cooler) => ({ ...cooler, bags: bagTally(log, cooler.cooler) })),
    bagsOnBench: bagsOnBench(log).length,
    kitsInStock: balances.get('stock') ?? 0,
    kitsMissing: balances.get('missing') ?? 0,
    kitsInHand: people(log)
      .map((person) => ({
        person,
        kits: balances.get(kitAccountKey({ in: 'hands', person: person.person })),
      }))
      // Also a person whose kits are all used: hands said to be empty are looked into.
      .flatMap(({ person, kits }) => (kits === undefined ? [] : [{ person, kits }])),
    blankLabels: tally.blanks,
    unusedLabels: tally.printed,
    counts: countsByKey(log, date),
    explanations: explanationsByKey(log, date),
  }
}

export const closeQueries = {
  close: ({ log }) => {
    const day = latestDay(log)
    const totals = dayTotals(figuresOfDay(log))
    if (!day)
      return granted({ date: null, state: 'none', signed: null, items: [], open: [], totals })
    const dusk = duskView(log, day.date)
    const items = closeItems(dusk)
    const closed = day.state === 'closed'
    const sheet = closed ? closeSheetOf(log, day.date) : null
    const view: CloseView = {
      date: day.date,
      state: day.state,
      signed:
        closed && day.closedBy && day.closedMs !== null
          ? { lead: namesOf(log)(day.closedBy), ms: day.closedMs }
          : null,
      // A signed close shows what was signed, whatever the ledger was put right to.
      items: sheet ? signedItems(sheet, namesOf(log)) : items,
      open: closed ? [] : needsBeforeClose(dusk, items),
      totals,
    }
    return granted(view)
  },
  closeSheet: (call, { date }) => closeSheetPdf(call, date ?? latestDay(call.log)?.date ?? null),
} satisfies Partial<QueryHandlers>

export const closeCommands = {
  'count.enter': ({ act }, { item, counted }) =>
    act((tx) => {
      const day = checkDayOpen(latestDay(tx))
      if (!day.ok) return day
      const { date } = day.value
      const key = countItemKey(item)
      if (!expectedAtDusk(duskView(tx, date)).some((each) => countItemKey(each.item) === key))
        return refused(
          'not-on-the-list',
          'That is not counted at this close.',
          'Choose a thing on the list.',
          'item',
        )
      return granted({ drafts: [draft('count.entered', { date, item, counted })], value: {} })
    }),
  'variance.explain': ({ act }, explanation) =>
    act((tx) => {
      const day = checkDayOpen(latestDay(tx))
      if (!day.ok) return day
      const items = closeItems(duskView(tx, day.value.date))
      return done(decideExplain(day.value.date, items, explanation))
    }),
  'day.close': async ({ act, log, by, pins, now }, { pin }) => {
    const right = await pins.check(by.person, pin, pinRecordOf(log, by.person), now)
    if (!right.ok) return right
    return act((tx) => {
      const day = checkDayOpen(latestDay(tx))
      if (!day.ok) return day
      return done(decideClose(day.value, by.person, duskView(tx, day.value.date)))
    })
  },
} satisfies Partial<CommandHandlers>
