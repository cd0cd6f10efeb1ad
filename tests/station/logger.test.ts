import { describe, expect, test } from 'vitest'
import { readDegrees, readLogger, readTime } from '../../electron/station/logger.ts'
import type { LoggerReading } from '../../shared-types/readings-file.ts'
import { code, refusal } from './records.ts'

const denver = 'America/Denver'
const chilled = { low: 0, high: 6 }
const now = Date.parse('2026-11-20T00:00:00Z')

const said: LoggerReading = {
  timeColumn: 0,
  temperatureColumn: 1,
  skipLines: 0,
  dateOrder: 'year-month-day',
  unit: 'C',
  zone: denver as LoggerReading['zone'],
}

describe('a time', () => {
  const iso = (ms: number | null) => (ms === null ? null : new Date(ms).toISOString())

  test.each([
    ['2026-11-14 06:30', 'year-month-day', '2026-11-14T13:30:00.000Z'],
    ['11/14/2026 6:30 AM', 'month-day-year', '2026-11-14T13:30:00.000Z'],
    ['11/14/26 12:05:09 AM', 'month-day-year', '2026-11-14T07:05:09.000Z'],
    ['14.11.2026 18:30:05', 'day-month-year', '2026-11-15T01:30:05.000Z'],
    ['2026-11-14T06:30:00Z', 'year-month-day', '2026-11-14T06:30:00.000Z'],
    ['2026-11-14T06:30:00+02:00', 'year-month-day', '2026-11-14T04:30:00.000Z'],
  ] as const)('%s, written %s, is %s', (text, order, expected) => {
    expect(iso(readTime(text, order, denver, 0))).toBe(expected)
  })

  test.each(['2026-02-30 10:00', '14.11.2026', 'Time', '2026-11-14 25:00'])(
    '%s is none',
    (text) => {
      expect(readTime(text, 'year-month-day', denver, 0)).toBeNull()
    },
  )

  // US daylight saving ends on the first Sunday of November (Energy Policy Act of 2005): 1 Nov 2026, 02:00.
  test('of the hour that comes twice goes forward with the file', () => {
    const first = readTime('2026-11-01 01:30', 'year-month-day', denver, 0) ?? 0
    expect(iso(first)).toBe('2026-11-01T07:30:00.000Z')
    expect(iso(readTime('2026-11-01 01:10', 'year-month-day', denver, first))).toBe(
      '2026-11-01T08:10:00.000Z',
    )
  })
})

test('a temperature has a point or a comma, and a unit behind it must be the one said', () => {
  expect(readDegrees('3,5 °C', 'C')).toBe(3.5)
  // 38 °F = 3.33 °C: NIST Special Publication 811 (2008), appendix B.8, from memory.
  expect(readDegrees('38', 'F')).toBeCloseTo(3.33, 2)
  expect(readDegrees('38 F', 'C')).toBeNull()
  expect(readDegrees('', 'C')).toBeNull()
  expect(readDegrees('999', 'C')).toBeNull()
})

describe('a file', () => {
  const rows = [
    ['Time', 'Inside', 'Battery'],
    ['2026-11-14 06:30', '3.5', '98'],
    ['2026-11-14 06:40', '---', '98'],
    ['2026-11-14 06:50', '4.1', '98'],
  ]

  test('gives its readings, and the lines that hold none', () => {
    const read = readLogger(rows, said, chilled, now)
    expect(read.ok && read.value.points.map(({ celsius }) => celsius)).toEqual([3.5, 4.1])
    expect(read.ok && read.value.skipped).toEqual([1, 3])
  })

  test('without a reading by what was said of it is refused', () => {
    expect(code(readLogger(rows, { ...said, timeColumn: 2 }, chilled, now))).toBe('no-readings')
  })

  test('of times to come is refused: its clock or its zone is wrong', () => {
    expect(code(readLogger(rows, said, chilled, Date.parse('2026-11-13T00:00:00Z')))).toBe(
      'no-readings',
    )
  })

  test('read in the wrong unit is asked about', () => {
    const fahrenheit = rows.map(([time = ''], place) => [time, String(37 + place)])
    expect(refusal(readLogger(fahrenheit, said, chilled, now))).toMatchObject({
      code: 'unit-in-doubt',
      field: 'unit',
    })
    expect(readLogger(fahrenheit, { ...said, unit: 'F' }, chilled, now).ok).toBe(true)
  })
})
