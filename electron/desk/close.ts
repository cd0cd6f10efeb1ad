/** The close: counting, explaining, signing, and the sheet that is printed. */
import type { ReadableLog } from '../../db/connection.ts'
import { animalsInLine } from '../../db/read/animals.ts'
import { bagsInCooler, bagsOnBench } from '../../db/read/bags.ts'
import { bagTally, coolers } from '../../db/read/coolers.ts'
import { countsByKey, countTries, explanationsByKey } from '../../db/read/counts.ts'
import { kitBalances } from '../../db/read/kits.ts'
import { people } from '../../db/read/people.ts'
import { closeSheetOf, latestDay } from '../../db/read/station.ts'
import { type CountItem, countItemKey } from '../../shared-types/close.ts'
import { draft, type EntryDraft } from '../../shared-types/entry.ts'
import { kitAccountKey } from '../../shared-types/kit.ts'
import type { LocalDate } from '../../shared-types/local-date.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import type { BagNumber, PersonId } from '../../shared-types/sample-number.ts'
import type { DayRecord, StationRecord } from '../../shared-types/station.ts'
import type { CloseView, LabelAccount } from '../../shared-types/views/close.ts'
import { checkDayOpen } from '../station/day.ts'
import { dayTotals } from '../station/figures.ts'
import { labelAccount } from '../station/label-account.ts'
import { causesBetween, withCauses } from '../station/likely-cause.ts'
import {
  closeItems,
  decideClose,
  decideExplain,
  type DuskView,
  expectedAtDusk,
  isAbsurd,
  needsBeforeClose,
  signedItems,
} from '../station/reconcile.ts'
import { scanBag } from '../station/scan.ts'
import type { CommandHandlers, QueryHandlers } from './call.ts'
import { evidenceOf } from './close-evidence.ts'
import { closeSheetPdf } from './close-sheet.ts'
import { done } from './decided.ts'
import { findCooler, homeOf } from './find.ts'
import { labelsLeft } from './labels-left.ts'
import { figuresOfDay } from './line.ts'
import { namesOf } from './names.ts'
import { checkOwnPin } from './own-pin.ts'
import { placesMissing } from './places-missing.ts'
import { secondSigner } from './second-signer.ts'

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
    bagsIn: (cooler) => bagsInCooler(log, cooler).map(({ bag }) => bag),
    explanations: explanationsByKey(log, date),
  }
}

/** The counts as the screen shows them: with every try, and the likely causes of what differs. */
function itemsShown(log: ReadableLog, day: DayRecord, dusk: DuskView, station: StationRecord) {
  const evidence = evidenceOf(log, day, dusk, station)
  const tries = countTries(log, day.date)
  const items = withCauses(closeItems(dusk), evidence).map((item) => ({
    ...item,
    tries: tries
      .filter(({ key }) => key === item.key)
      .map(({ counted, by, ms }) => ({ counted, by, ms })),
  }))
  return { items, between: causesBetween(items, evidence) }
}

/** A station that has not said otherwise wants two people to sign. */
function secondOf(log: ReadableLog, { settings }: StationRecord, lead: PersonId | undefined) {
  const signing = people(log).filter(
    ({ person, active, role }) => active && role !== 'office' && person !== lead,
  )
  return {
    wanted: settings.secondSigner !== false,
    people: signing.map(({ person, name }) => ({ person, name })),
  }
}

/** Who signed a closed day, or null. */
function signedBy(log: ReadableLog, day: DayRecord): CloseView['signed'] {
  const sheet = day.state === 'closed' ? closeSheetOf(log, day.date) : null
  if (!sheet || day.closedMs === null) return null
  const nameOf = namesOf(log)
  const { lead, second, aloneBecause } = sheet
  return {
    lead: nameOf(lead),
    second: second && nameOf(second),
    aloneBecause,
    ms: day.closedMs,
  }
}

/** Every label by what became of it, once the unused ones are counted. */
function labelsOfDay(log: ReadableLog, date: LocalDate): LabelAccount | null {
  const count = countsByKey(log, date).get('unused-kit-labels')
  return count ? labelAccount(labelsLeft(log), count.counted) : null
}

export const closeQueries = {
  close: ({ log, station, person }) => {
    const day = latestDay(log)
    const about = {
      totals: dayTotals(figuresOfDay(log)),
      placesMissing: day ? placesMissing(log, station.settings, day.date) : [],
      second: secondOf(log, station, person?.person),
      labels: day && labelsOfDay(log, day.date),
    }
    if (!day)
      return granted({
        date: null,
        state: 'none',
        signed: null,
        items: [],
        open: [],
        between: [],
        ...about,
      })
    const { date, state } = day
    const sheet = state === 'closed' ? closeSheetOf(log, date) : null
    const signed = signedBy(log, day)
    // A signed close shows what was signed, whatever the ledger was put right to.
    if (sheet)
      return granted({
        date,
        state,
        signed,
        items: signedItems(sheet, namesOf(log)),
        open: [],
        between: [],
        ...about,
      })
    const dusk = duskView(log, date)
    const { items, between } = itemsShown(log, day, dusk, station)
    return granted({
      date,
      state,
      signed,
      items,
      open: needsBeforeClose(dusk, items),
      between,
      ...about,
    })
  },
  closeSheet: (call, { date }) => closeSheetPdf(call, date ?? latestDay(call.log)?.date ?? null),
} satisfies Partial<QueryHandlers>

/** A number for one thing, or the bags scanned in a cooler. */
interface CountGiven {
  readonly item: CountItem
  readonly counted: number
  readonly bags: BagNumber[] | null
  readonly sure: boolean
}

function decideCount(tx: ReadableLog, given: CountGiven): Result<EntryDraft[]> {
  const day = checkDayOpen(latestDay(tx))
  if (!day.ok) return day
  const { date } = day.value
  const { item, counted, bags, sure } = given
  const key = countItemKey(item)
  const found = expectedAtDusk(duskView(tx, date)).find((each) => countItemKey(each.item) === key)
  if (!found)
    return refused(
      'not-on-the-list',
      'That is not counted at this close.',
      'Choose a thing on the list.',
      'item',
    )
  if (!sure && isAbsurd(found.expected, counted))
    return refused(
      'count-absurd',
      `${counted.toLocaleString('en')} is more than ten times what can be here.`,
      'Look at the number; if it is right, enter it once more.',
      'counted',
    )
  return granted([draft('count.entered', { date, item, counted, bags })])
}

export const closeCommands = {
  'count.enter': ({ act }, { item, counted, sure }) =>
    act((tx) => done(decideCount(tx, { item, counted, bags: null, sure }))),
  'count.scan': ({ act }, { cooler: text, bags: texts }) =>
    act((tx) => {
      const cooler = findCooler(tx, text)
      if (!cooler.ok) return cooler
      const bags = new Set<BagNumber>()
      for (const each of texts) {
        const bag = scanBag(homeOf(tx), each)
        if (!bag.ok) return bag
        bags.add(bag.value)
      }
      const item = { of: 'bags', cooler: cooler.value.cooler } as const
      return done(decideCount(tx, { item, counted: bags.size, bags: [...bags], sure: true }))
    }),
  'variance.explain': ({ act }, explanation) =>
    act((tx) => {
      const day = checkDayOpen(latestDay(tx))
      if (!day.ok) return day
      const items = closeItems(duskView(tx, day.value.date))
      return done(decideExplain(day.value.date, items, explanation))
    }),
  'day.close': async (call, { pin, second, aloneBecause }) => {
    const right = await checkOwnPin(call, pin)
    if (!right.ok) return right
    const other = await secondSigner(call, second, ({ role }) => role !== 'office')
    if (!other.ok) return other
    const { act, by, station } = call
    return act((tx) => {
      const day = checkDayOpen(latestDay(tx))
      if (!day.ok) return day
      const signers = { lead: by.person, second: other.value, aloneBecause }
      const wanted = station.settings.secondSigner !== false
      return done(decideClose(day.value, signers, wanted, duskView(tx, day.value.date)))
    })
  },
} satisfies Partial<CommandHandlers>
