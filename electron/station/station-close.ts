/**
 * The station's close over the merged log: what the desks counted added up, so that a kit given at one
 * desk and used at another, or a label printed at one and stuck on at another, is no variance.
 */
import type { Outcome } from '../../shared-types/animal.ts'
import { type VarianceReason, varianceWords } from '../../shared-types/close.ts'
import { draft, type EntryBody, type EntryDraft } from '../../shared-types/entry.ts'
import type { LocalDate } from '../../shared-types/local-date.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import {
  type CoolerNumber,
  type DeskId,
  numberParts,
  type SeasonStation,
} from '../../shared-types/sample-number.ts'
import { type StationItem, stationItemKey } from '../../shared-types/station-close.ts'
import type { Need } from '../../shared-types/views/common.ts'
import type { StationItemView } from '../../shared-types/views/station-close.ts'
import { checkSigners, type Signers } from './signers.ts'

type DeskSheet = EntryBody<'day.closed'>
type DeskItem = DeskSheet['items'][number]

/** One desk's close of the day, and what it did that only the merged log can tell. */
export interface DeskClose {
  readonly desk: DeskId
  /** The hash of the close that stands; null while the desk is not closed. */
  readonly close: string | null
  readonly sheet: DeskSheet | null
  readonly state: 'closed' | 'open' | 'no-day'
  /** Kits it gave to other desks less those it brought from them, but for what its close put right. */
  readonly kitsGiven: number
  /** Labels of other desks that it stuck on, or that became void here. */
  readonly labelsOfOthers: number
  /** Bags that it put into coolers of other desks less those that it took out of them. */
  readonly bagsInOthers: ReadonlyMap<CoolerNumber, number>
}

/** Why a station's count differs: it holds for these two numbers only. */
interface Explanation {
  readonly expected: number
  readonly counted: number
  readonly reason: VarianceReason
  readonly words: string
}

export interface StationView {
  readonly station: SeasonStation
  readonly date: LocalDate
  readonly desks: readonly DeskClose[]
  readonly explanations: ReadonlyMap<string, Explanation>
}

/** A thing added up over the desks, in words. `nameOf` gives the name of a cooler. */
export function stationItemWords(item: StationItem, nameOf: (number: string) => string): string {
  switch (item.of) {
    case 'animals':
      return 'Animals checked in'
    case 'kits':
      return 'Kits in stock and in hand'
    case 'blank-labels':
      return 'Blank labels left'
    case 'unused-kit-labels':
      return 'Printed labels not used'
    case 'bags':
      // Two desks may both have a North 1.
      return `Bags in cooler ${nameOf(item.cooler)} of desk ${numberParts(item.cooler).desk}`
  }
}

/** Which thing of the station a desk's count belongs to. */
function itemOf({ item }: DeskItem): StationItem {
  switch (item.of) {
    case 'kits-in-stock':
    case 'kits-in-hand':
      return { of: 'kits' }
    case 'bags':
      return { of: 'bags', cooler: item.cooler }
    default:
      return { of: item.of }
  }
}

/** What other desks' entries add to what one desk's log expects of a thing. */
function between({ desks }: StationView, item: StationItem): number {
  const sum = (each: (desk: DeskClose) => number) =>
    desks.reduce((all, desk) => all + each(desk), 0)
  switch (item.of) {
    case 'kits':
      return sum(({ kitsGiven }) => kitsGiven)
    case 'unused-kit-labels':
      return 0 - sum(({ labelsOfOthers }) => labelsOfOthers)
    case 'bags':
      return sum(({ bagsInOthers }) => bagsInOthers.get(item.cooler) ?? 0)
    default:
      return 0
  }
}

const order: readonly StationItem['of'][] = [
  'animals',
  'bags',
  'kits',
  'blank-labels',
  'unused-kit-labels',
]

/** Every count of the desks that closed, added up; a desk that is still open counts for nothing yet. */
export function stationItems(
  view: StationView,
  nameOf: (number: string) => string,
): StationItemView[] {
  const parts = new Map<string, { item: StationItem; lines: StationItemView['desks'] }>()
  for (const { desk, sheet } of view.desks)
    for (const each of sheet?.items ?? []) {
      const item = itemOf(each)
      const key = stationItemKey(item)
      const part = parts.get(key) ?? { item, lines: [] }
      parts.set(key, { item, lines: withLine(part.lines, desk, each) })
    }
  return [...parts.values()]
    .toSorted((a, b) => order.indexOf(a.item.of) - order.indexOf(b.item.of))
    .map(({ item, lines }) => addedUp(view, item, lines, nameOf))
}

/** The desk's line with one more of its counts: kits in stock and in each hand make one line. */
function withLine(
  lines: StationItemView['desks'],
  desk: DeskId,
  { expected, counted, reason, words }: DeskItem,
): StationItemView['desks'] {
  const said = reason === null ? [] : [[varianceWords[reason], words].filter(Boolean).join(': ')]
  const before = lines.find((line) => line.desk === desk)
  if (!before) return [...lines, { desk, expected, counted, reasons: said }]
  const sum = {
    desk,
    expected: before.expected + expected,
    counted: before.counted + counted,
    reasons: [...before.reasons, ...said],
  }
  return lines.map((line) => (line === before ? sum : line))
}

function addedUp(
  view: StationView,
  item: StationItem,
  desks: StationItemView['desks'],
  nameOf: (number: string) => string,
): StationItemView {
  const moved = between(view, item)
  const expected = desks.reduce((sum, line) => sum + line.expected, moved)
  const counted = desks.reduce((sum, line) => sum + line.counted, 0)
  const key = stationItemKey(item)
  const given = view.explanations.get(key)
  const holds = given !== undefined && given.expected === expected && given.counted === counted
  return {
    key,
    item,
    words: stationItemWords(item, nameOf),
    expected,
    counted,
    variance: counted - expected,
    between: moved,
    desks,
    explained: holds ? { reason: given.reason, words: given.words } : null,
  }
}

/** What stands in the way of the station's close, the hardest first. */
export function needsBeforeStationClose(
  { desks, date }: StationView,
  items: readonly StationItemView[],
): Need[] {
  const needs: Need[] = []
  const open = desks.filter(({ state }) => state === 'open')
  if (open.length > 0)
    needs.push({
      code: 'desk-not-closed',
      urgent: true,
      say: `${open.map(({ desk }) => `Desk ${desk}`).join(', ')} ${open.length === 1 ? 'is' : 'are'} not closed for ${date}.`,
      next: 'Close the day at that desk, then merge its log once more.',
      screen: 'close',
    })
  else if (!desks.some(({ state }) => state === 'closed'))
    needs.push({
      code: 'no-desk-closed',
      urgent: true,
      say: `No desk of this station has closed ${date}.`,
      next: 'Close the day at each desk, then merge their logs.',
      screen: 'close',
    })
  const unexplained = items.filter(({ variance, explained }) => variance !== 0 && !explained).length
  if (unexplained > 0)
    needs.push({
      code: 'variance-unexplained',
      urgent: true,
      say: `${unexplained} ${unexplained === 1 ? 'variance is' : 'variances are'} left over all desks, without a reason.`,
      next: 'Ask the desks, and give the reason.',
      screen: 'close',
    })
  return needs
}

/** Explains what is left over all desks. */
export function decideStationExplain(
  view: StationView,
  items: readonly StationItemView[],
  explanation: { item: StationItem; reason: VarianceReason; words: string },
): Result<EntryDraft[]> {
  const { item, reason, words } = explanation
  const found = items.find(({ key }) => key === stationItemKey(item))
  if (!found)
    return refused(
      'not-on-the-list',
      'No desk of this station counted that.',
      'Choose a thing on the list.',
      'item',
    )
  const { expected, counted } = found
  if (expected === counted)
    return refused(
      'no-variance',
      `${found.words}: over all desks the counts agree.`,
      'Nothing needs explaining.',
      'item',
    )
  if (reason === 'other' && words.length < 3)
    return refused('reason-needed', '"Other" needs a few words.', 'Say what happened.', 'words')
  const { station, date } = view
  return granted([
    draft('station.variance-explained', {
      station,
      date,
      item,
      expected,
      counted,
      reason,
      words,
    }),
  ])
}

/** Closes the station over two names, or refuses with the first thing that stands in the way. */
export function decideStationClose(
  view: StationView,
  items: readonly StationItemView[],
  signers: Signers,
  secondWanted: boolean,
): Result<EntryDraft[]> {
  const [first] = needsBeforeStationClose(view, items)
  if (first) return refused(first.code, first.say, first.next)
  const signed = checkSigners(signers, secondWanted)
  if (!signed.ok) return signed
  const { station, date, desks } = view
  return granted([
    draft('station.closed', {
      station,
      date,
      ...signed.value,
      desks: desks.flatMap(({ desk, close }) => (close === null ? [] : [{ desk, close }])),
      items: items.map(({ item, expected, counted, explained }) => ({
        item,
        expected,
        counted,
        reason: explained?.reason ?? null,
        words: explained?.words ?? '',
      })),
      animals: animalsOf(desks),
    }),
  ])
}

/** The animals of all desks by what became of them. */
export function animalsOf(desks: readonly DeskClose[]): DeskSheet['animals'] {
  const sheets = desks.flatMap(({ sheet }) => (sheet ? [sheet.animals] : []))
  const sum = (of: (animals: DeskSheet['animals']) => number) =>
    sheets.reduce((all, animals) => all + of(animals), 0)
  const outcome = (name: Outcome) => sum(({ outcomes }) => outcomes[name] ?? 0)
  return {
    checkedIn: sum(({ checkedIn }) => checkedIn),
    outcomes: { both: outcome('both'), one: outcome('one'), none: outcome('none') },
    left: sum(({ left }) => left),
    recorded: sum(({ recorded }) => recorded),
  }
}
