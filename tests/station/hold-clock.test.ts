import { expect, test } from 'vitest'
import { holdUntilMs } from '../../electron/station/hold-clock.ts'
import { bag, morning } from './records.ts'

const hours = (count: number) => count * 3_600_000
const station = { holdHours: 48 }

test('a fresh sample must be frozen or delivered so many hours after it was sealed', () => {
  expect(holdUntilMs(station, bag(), 'chilled')).toBe(morning + hours(48))
  expect(holdUntilMs({ holdHours: 36 }, bag(), 'chilled')).toBe(morning + hours(36))
})

test('the clock runs on the bench too, and in a cooler that should never have held it', () => {
  expect(holdUntilMs(station, bag(), null)).toBe(morning + hours(48))
  expect(holdUntilMs(station, bag(), 'room')).toBe(morning + hours(48))
})

test('it stops in the freezer, and never runs for tissue in formalin', () => {
  expect(holdUntilMs(station, bag(), 'frozen')).toBeNull()
  expect(holdUntilMs(station, bag(1, { kept: 'formalin' }), 'room')).toBeNull()
})
