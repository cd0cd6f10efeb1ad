import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  dayProfile,
  learnDay,
  minuteOf,
  priorOfDay,
  shareBy,
  stillToCome,
} from '../../electron/station/arrivals.ts'
import { chanceAtMost, stockFor } from '../../electron/station/demand.ts'
import { usualLineSettings } from '../../electron/station/line-settings.ts'
import type { LineSettings } from '../../shared-types/line.ts'

const settings: LineSettings = {
  ...usualLineSettings,
  opens: '08:00',
  closes: '12:00',
  profile: [
    { from: '08:00', weight: 1 },
    { from: '09:00', weight: 3 },
    { from: '11:00', weight: 0 },
  ],
  expectedAnimals: 100,
  expectedSpread: 0.5,
}
const profile = dayProfile(settings)

describe('the day’s profile', () => {
  test('gives each stretch its share of the day', () => {
    expect([7, 8, 8.5, 9, 10, 11, 12, 20].map((hour) => shareBy(profile, hour * 60))).toEqual([
      0, 0, 0.125, 0.25, 0.625, 1, 1, 1,
    ])
  })

  test('says by when a share has come', () => {
    expect(minuteOf(profile, 0.125)).toBe(8.5 * 60)
    expect(minuteOf(profile, 0.625)).toBe(10 * 60)
  })

  test('of nothing but zeros is taken as even', () => {
    const even = dayProfile({ ...settings, profile: [{ from: '08:00', weight: 0 }] })
    expect(shareBy(even, 10 * 60)).toBe(0.5)
  })

  test('never falls, whatever stretches were typed', () => {
    const stretch = fc.record({
      from: fc.integer({ min: 0, max: 23 }).map((hour) => `${String(hour).padStart(2, '0')}:00`),
      weight: fc.integer({ min: 0, max: 9 }),
    })
    fc.assert(
      fc.property(fc.array(stretch, { minLength: 1, maxLength: 8 }), (stretches) => {
        const any = dayProfile({ ...settings, profile: stretches })
        const shares = Array.from({ length: 25 }, (_, hour) => shareBy(any, hour * 60))
        for (const [hour, share] of shares.entries()) {
          expect(share).toBeGreaterThanOrEqual(shares[hour - 1] ?? 0)
          expect(share).toBeLessThanOrEqual(1)
        }
      }),
      { seed: 4 },
    )
  })
})

describe('what is still to come', () => {
  const prior = priorOfDay(settings)

  test('is at first what the settings expect, with their spread', () => {
    const whole = stillToCome(prior, 1)
    expect(whole.mean).toBe(100)
    // A gamma-mixed Poisson: variance is the mean and the square of the spread.
    const variance = whole.mean + whole.mean ** 2 / whole.shape
    expect(variance).toBeCloseTo(100 + 50 ** 2, 6)
  })

  test('grows with a busy morning and shrinks with a quiet one', () => {
    const busy = stillToCome(learnDay(prior, 50, 0.25), 0.75)
    const quiet = stillToCome(learnDay(prior, 5, 0.25), 0.75)
    expect(busy.mean).toBeGreaterThan(120)
    expect(quiet.mean).toBeLessThan(35)
    // By hand: shape 4 and rate .04, so (4 + 50) / (.04 + .25) * .75.
    expect(busy.mean).toBeCloseTo((54 / 0.29) * 0.75, 9)
  })

  test('is nothing once the profile is through', () => {
    expect(stockFor(stillToCome(prior, 0), 0.95)).toBe(0)
  })

  test('of a number known well is as sure as chance allows', () => {
    const known = stillToCome(priorOfDay({ ...settings, expectedSpread: 0 }), 1)
    expect(stockFor({ mean: 20, shape: known.shape }, 0.95)).toBe(28)
    expect(chanceAtMost(known, 100)).toBeCloseTo(0.5266, 3)
  })
})
