import { describe, expect, test } from 'vitest'
import {
  localDate,
  localDateTime,
  localIso,
  localTime,
  whenThere,
} from '../../electron/station/local-time.ts'

const denver = 'America/Denver'
const at = (iso: string) => Date.parse(iso)
const dusk = at('2026-11-14T17:42:10-07:00')

test('a moment is read in the time of the station, with its zone', () => {
  expect(localDate(dusk, denver)).toBe('2026-11-14')
  expect(localTime(dusk, denver)).toBe('17:42')
  expect(localDateTime(dusk, denver)).toBe('Sat 14 Nov 2026, 17:42 MST')
  expect(localIso(dusk, denver)).toBe('2026-11-14T17:42:10-07:00')
})

test('midnight is 00:00 of the new day, in the station’s time and not in London’s', () => {
  const midnight = at('2026-11-15T00:00:00-07:00')
  expect(localDate(midnight, denver)).toBe('2026-11-15')
  expect(localTime(midnight, denver)).toBe('00:00')
  expect(localDate(midnight - 1, denver)).toBe('2026-11-14')
  expect(localTime(at('2026-11-14T12:00:00-07:00'), denver)).toBe('12:00')
})

// Daylight saving in the United States ends at 2 a.m. on the first Sunday of November and begins at
// 2 a.m. on the second Sunday of March (15 U.S.C. 260a).
describe('when the clocks change', () => {
  test('the hour that comes twice on 1 November is told apart by its zone', () => {
    const first = at('2026-11-01T07:30:00Z')
    const second = first + 3_600_000
    expect([localTime(first, denver), localTime(second, denver)]).toEqual(['01:30', '01:30'])
    expect(localDateTime(first, denver)).toBe('Sun 1 Nov 2026, 01:30 MDT')
    expect(localDateTime(second, denver)).toBe('Sun 1 Nov 2026, 01:30 MST')
    expect(localIso(first, denver)).toBe('2026-11-01T01:30:00-06:00')
    expect(localIso(second, denver)).toBe('2026-11-01T01:30:00-07:00')
  })

  test('the hour from two to three on 8 March is skipped', () => {
    const before = at('2026-03-08T08:59:59Z')
    expect(localIso(before, denver)).toBe('2026-03-08T01:59:59-07:00')
    expect(localIso(before + 1000, denver)).toBe('2026-03-08T03:00:00-06:00')
  })
})

// Offsets of these zones: IANA time zone database.
test.each([
  ['Newfoundland, half an hour off', 'America/St_Johns', '2026-11-14T21:12:10-03:30'],
  ['Nepal, a quarter of an hour off', 'Asia/Kathmandu', '2026-11-15T06:27:10+05:45'],
  ['India', 'Asia/Kolkata', '2026-11-15T06:12:10+05:30'],
  ['Greenwich', 'UTC', '2026-11-15T00:42:10+00:00'],
  ['Arizona, which keeps one time all year', 'America/Phoenix', '2026-11-14T17:42:10-07:00'],
])('the offset of %s is written out', (_, zone, iso) => {
  expect(localIso(dusk, zone)).toBe(iso)
  expect(Date.parse(iso)).toBe(dusk)
})

test('a moment near is told by its hour, one of another day with its day', () => {
  expect(whenThere(dusk, dusk - 3_600_000, denver)).toBe('at 17:42')
  expect(whenThere(dusk, dusk - 20 * 3_600_000, denver)).toBe('Sat 14 Nov at 17:42')
})
