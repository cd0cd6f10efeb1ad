import { expect, test } from 'vitest'
import { holdLine, holdUntilMs, sealedBy } from '../../electron/station/hold-clock.ts'
import { bag, cooler, morning } from './records.ts'

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

// US daylight saving ends on the first Sunday of November (Energy Policy Act of 2005): 1 Nov 2026, 02:00.
test('48 hours are 48 hours over the night in which the clocks go back', () => {
  const sealedMs = Date.parse('2026-10-31T20:00:00-06:00')
  const until = holdUntilMs(station, bag(1, { sealedMs }), 'chilled')
  expect(until).toBe(Date.parse('2026-11-02T19:00:00-07:00'))
})

test('a bag sealed under a clock that ran ahead is not kept longer for it', () => {
  // The clock stood five hours ahead, a bag was sealed, then the lead put it right.
  const putBack = [{ wallMs: morning, lastMs: morning + hours(5) }]
  expect(sealedBy(morning + hours(4.5), putBack)).toBe(morning - hours(0.5))
  expect(sealedBy(morning - hours(2), putBack)).toBe(morning - hours(2))
  expect(sealedBy(morning + hours(6), putBack)).toBe(morning + hours(6))
})

test('what is due first stands first, with the bags due within the hour beside it', () => {
  const timed = (serial: number, untilMs: number | null) => ({ bag: bag(serial).bag, untilMs })
  const line = holdLine(
    [
      { cooler: null, name: 'Bench', bags: [timed(1, morning + hours(9)), timed(2, null)] },
      {
        cooler: cooler(1).cooler,
        name: 'North 1',
        bags: [timed(3, morning - 1), timed(4, morning + hours(0.5)), timed(5, morning + hours(3))],
      },
      { cooler: cooler(2).cooler, name: 'Frozen', bags: [timed(6, null)] },
    ],
    morning,
  )
  expect(line.map(({ of, isLate, bags }) => [of.name, isLate, bags.length])).toEqual([
    ['North 1', true, 2],
    ['Bench', false, 1],
  ])
})
