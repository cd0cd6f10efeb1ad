import { describe, expect, test } from 'vitest'
import { arrivalMinutes, shareCome } from '../../electron/station/practice/arrivals.ts'
import { Chance } from '../../electron/station/practice/random.ts'
import { openingDay, openingMorning } from '../../electron/station/practice/shapes.ts'

/** The largest gap between the share of draws below a minute and the share that should be. */
function kolmogorovSmirnov(minutes: readonly number[], share: (minute: number) => number): number {
  return Math.max(
    ...minutes.map((minute, place) => {
      const expected = share(minute)
      return Math.max(expected - place / minutes.length, (place + 1) / minutes.length - expected)
    }),
  )
}

describe('when animals come on a practice day', () => {
  // Critical value: Massey, "The Kolmogorov-Smirnov Test for Goodness of Fit", JASA 46 (1951), table 1:
  // 1.63 / sqrt(n) at the 1% level for n over 35.
  test.each([
    ['opening day', openingDay],
    ['opening morning', openingMorning],
  ])('arrivals of an %s follow its rates', (_, { arrivals }) => {
    const minutes = arrivalMinutes(new Chance(11, 1), 4000, arrivals)
    const gap = kolmogorovSmirnov(minutes, (minute) => shareCome(arrivals, minute))
    expect(gap).toBeLessThan(1.63 / Math.sqrt(minutes.length))
  })

  test('another shape of day would not pass the same test', () => {
    const minutes = arrivalMinutes(new Chance(11, 1), 4000, openingDay.arrivals)
    const even = { ...openingDay.arrivals, rates: openingDay.arrivals.rates.map(() => 1) }
    const gap = kolmogorovSmirnov(minutes, (minute) => shareCome(even, minute))
    expect(gap).toBeGreaterThan(1.63 / Math.sqrt(minutes.length))
  })

  test('more come in the two hours before dark than in the two busiest of the morning', () => {
    const minutes = arrivalMinutes(new Chance(2, 1), 1000, openingDay.arrivals)
    const between = (from: number, to: number) =>
      minutes.filter((minute) => minute >= from && minute < to).length
    // Minutes from six: half past eight to half past ten, and half past four to half past six.
    const [morning, evening] = [between(150, 270), between(630, 750)]
    expect(evening).toBeGreaterThan(1.5 * morning)
    expect(morning).toBeGreaterThan(1.5 * between(390, 510))
  })

  test('they come in order, and within the hours of the station', () => {
    const minutes = arrivalMinutes(new Chance(9, 1), 500, openingDay.arrivals)
    expect(minutes).toEqual(minutes.toSorted((a, b) => a - b))
    expect(minutes[0]).toBeGreaterThanOrEqual(60)
    expect(minutes.at(-1)).toBeLessThanOrEqual(780)
  })
})
