import { expect, test } from 'vitest'
import {
  formatClock,
  formatDate,
  formatMinutes,
  formatTime,
} from '../../../renderer/parts/zoned-time.ts'

test('a moment is told in the time of the station, not of the laptop', () => {
  const ms = Date.parse('2026-11-15T00:42:00Z')
  expect(formatTime(ms, 'America/Denver')).toBe('Sat 14 Nov, 17:42 MST')
  expect(formatTime(ms, 'America/Chicago')).toBe('Sat 14 Nov, 18:42 CST')
  expect(formatClock(ms, 'America/Denver')).toBe('17:42')
})

// US daylight saving time ends on the first Sunday of November at 02:00 (15 U.S.C. 260a, from memory).
test('the hour that comes twice in November is told apart by its zone', () => {
  expect(formatTime(Date.parse('2026-11-01T07:30:00Z'), 'America/Denver')).toBe(
    'Sun 1 Nov, 01:30 MDT',
  )
  expect(formatTime(Date.parse('2026-11-01T08:30:00Z'), 'America/Denver')).toBe(
    'Sun 1 Nov, 01:30 MST',
  )
})

test('midnight is 00, not 24', () => {
  expect(formatClock(Date.parse('2026-11-14T07:00:00Z'), 'America/Denver')).toBe('00:00')
})

test('a calendar day is itself wherever the laptop stands', () => {
  expect(formatDate('2026-11-14')).toBe('Saturday 14 November 2026')
})

test('waits are in minutes, long ones in hours and minutes, and never negative', () => {
  expect(formatMinutes(42.9)).toBe('42 min')
  expect(formatMinutes(125)).toBe('2 h 05 min')
  expect(formatMinutes(-3)).toBe('0 min')
})
