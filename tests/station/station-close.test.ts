/** The station's close as a rule: what evens out between desks is no variance, what does not is one. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  type DeskClose,
  needsBeforeStationClose,
  stationItems,
  type StationView,
} from '../../electron/station/station-close.ts'
import type { CountItem } from '../../shared-types/close.ts'
import { LocalDate } from '../../shared-types/local-date.ts'
import {
  coolerNumber,
  DeskId,
  deskLetters,
  personId,
  SeasonStation,
} from '../../shared-types/sample-number.ts'

const date = LocalDate.parse('2026-11-14')
const station = SeasonStation.parse('26KRV')
const deskAt = (place: number) => DeskId.parse(`26KRV${deskLetters[place] ?? 'A'}`)
const nameOf = (number: string) => number

function closed(
  desk: DeskId,
  counts: readonly { item: CountItem; expected: number; counted: number }[],
  moved: Partial<DeskClose> = {},
): DeskClose {
  return {
    desk,
    close: desk.toLowerCase().padEnd(64, '0'),
    state: 'closed',
    sheet: {
      date,
      lead: personId(desk, 1),
      second: null,
      aloneBecause: 'alone',
      items: counts.map((each) => ({ ...each, reason: null, words: '' })),
      animals: { checkedIn: 3, outcomes: { both: 2, one: 1, none: 0 }, left: 0, recorded: 0 },
    },
    kitsGiven: 0,
    labelsOfOthers: 0,
    bagsInOthers: new Map(),
    ...moved,
  }
}

const viewOf = (...desks: DeskClose[]): StationView => ({
  station,
  date,
  desks,
  explanations: new Map(),
})

const varianceOf = (view: StationView, key: string) =>
  stationItems(view, nameOf).find((each) => each.key === key)?.variance

const stock = { of: 'kits-in-stock' } as const
const labels = { of: 'unused-kit-labels' } as const

test('kits in stock and in each hand of all desks are one thing; a cooler is one whoever filled it', () => {
  const [a, c] = [deskAt(0), deskAt(1)]
  const cooler = coolerNumber(a, 1)
  const view = viewOf(
    closed(a, [
      { item: stock, expected: 40, counted: 40 },
      { item: { of: 'kits-in-hand', person: personId(a, 2) }, expected: 6, counted: 6 },
      { item: { of: 'bags', cooler }, expected: 10, counted: 11 },
    ]),
    closed(c, [{ item: stock, expected: 20, counted: 20 }], {
      bagsInOthers: new Map([[cooler, 1]]),
    }),
  )
  expect(stationItems(view, nameOf)).toMatchObject([
    { key: `bags:${cooler}`, expected: 11, counted: 11, between: 1, variance: 0 },
    { key: 'kits', expected: 66, counted: 66, desks: [{ counted: 46 }, { counted: 20 }] },
  ])
})

test('a desk that is still open counts for nothing, and stands in the way', () => {
  const [a, c] = [deskAt(0), deskAt(1)]
  const open: DeskClose = { ...closed(c, []), state: 'open', close: null, sheet: null }
  const view = viewOf(closed(a, [{ item: stock, expected: 4, counted: 4 }]), open)
  expect(needsBeforeStationClose(view, stationItems(view, nameOf)).map(({ code }) => code)).toEqual(
    ['desk-not-closed'],
  )
  const away: DeskClose = { ...open, state: 'no-day' }
  const one = viewOf(closed(a, []), away)
  expect(needsBeforeStationClose(one, stationItems(one, nameOf))).toEqual([])
})

/** Kits that go from one desk to another, told to the giving desk or not; and what is truly lost. */
const days = fc.record({
  starts: fc.array(fc.integer({ min: 50, max: 90 }), { minLength: 2, maxLength: 3 }),
  gifts: fc.array(
    fc.record({
      from: fc.nat(2),
      to: fc.nat(2),
      count: fc.integer({ min: 1, max: 5 }),
      told: fc.boolean(),
    }),
    { maxLength: 6 },
  ),
  used: fc.array(
    fc.record({ by: fc.nat(2), printedAt: fc.nat(2), labels: fc.integer({ min: 2, max: 5 }) }),
    { maxLength: 6 },
  ),
  lost: fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 3, maxLength: 3 }),
})

test('over any day of two or three desks what is left is what was lost: none missed, none invented', () => {
  fc.assert(
    fc.property(days, ({ starts, gifts, used, lost }) => {
      const at = starts.map((start) => ({
        expected: start,
        there: start,
        given: 0,
        labels: 60,
        ofOthers: 0,
        stuck: 0,
      }))
      const desk = (place: number) => {
        const found = at[place % at.length]
        if (!found) throw new Error('a station has desks')
        return found
      }
      for (const { from, to, count, told } of gifts) {
        if (from % at.length === to % at.length) continue
        desk(from).there -= count
        desk(to).there += count
        if (told) {
          desk(from).expected -= count
          desk(from).given += count
        }
        desk(to).expected += count
        desk(to).given -= count
      }
      // The receiving desk always knows; where the giving one was not told, its own count is short.
      for (const { by, printedAt, labels: stuck } of used) {
        if (by % at.length === printedAt % at.length) continue
        desk(printedAt).stuck += stuck
        desk(by).ofOthers += stuck
      }
      const view = viewOf(
        ...at.map((each, place) =>
          closed(
            deskAt(place),
            [
              { item: stock, expected: each.expected, counted: each.there - (lost[place] ?? 0) },
              { item: labels, expected: each.labels, counted: each.labels - each.stuck },
            ],
            { kitsGiven: each.given, labelsOfOthers: each.ofOthers },
          ),
        ),
      )
      const allLost = at.reduce((sum, _, place) => sum + (lost[place] ?? 0), 0)
      expect(varianceOf(view, 'kits')).toBe(0 - allLost || 0)
      expect(varianceOf(view, 'unused-kit-labels')).toBe(0)
    }),
    { seed: 20261116, numRuns: 200 },
  )
})
