/** Stock for a day that nobody knows yet, against a textbook, published quantiles and jStat. */
import fc from 'fast-check'
import jstat from 'jstat'
import { expect, test } from 'vitest'
import { chanceAtMost, serviceLevel, stockFor } from '../../electron/station/demand.ts'

const poisson = (mean: number) => ({ mean, shape: Infinity })

test('Stevenson, Operations Management 14e, chapter 12, example 15: Poisson 4, short 3, excess 2', () => {
  // Cumulative .018 .092 .238 .433 .629 .785 in the book; service level .60, so stock 4.
  expect(serviceLevel(3, 2)).toBeCloseTo(0.6, 12)
  const cumulative = [0.018, 0.092, 0.238, 0.433, 0.629, 0.785]
  cumulative.forEach((chance, count) => {
    expect(chanceAtMost(poisson(4), count)).toBeCloseTo(chance, 3)
  })
  expect(stockFor(poisson(4), serviceLevel(3, 2))).toBe(4)
})

test('the same page, a discrete demand: short 4,200, excess 800, so a service level of .84', () => {
  expect(serviceLevel(4200, 800)).toBeCloseTo(0.84, 12)
})

test('where the service level equals a cumulative chance, the lower of the two equal stocks is given', () => {
  // Stevenson p. 537: then two stocking levels are equally good.
  const level = chanceAtMost(poisson(4), 4)
  expect([4, 5]).toContain(stockFor(poisson(4), level))
})

test('Poisson quantiles: 90, 95, 98 and 99 in 100 of means 10, 20 and 164', () => {
  const published: [mean: number, stocks: number[]][] = [
    [10, [14, 15, 17, 18]],
    [20, [26, 28, 30, 31]],
    [164, [181, 185, 191, 195]],
  ]
  for (const [mean, stocks] of published)
    expect([0.9, 0.95, 0.98, 0.99].map((level) => stockFor(poisson(mean), level))).toEqual(stocks)
})

test('jStat, an independent library, agrees on Poisson and on negative binomial chances', () => {
  // jStat sums powers and factorials, which bounds what it can check.
  const means = fc.double({ min: 0.5, max: 80, noNaN: true })
  fc.assert(
    fc.property(
      means,
      fc.integer({ min: 1, max: 60 }),
      fc.integer({ min: 0, max: 120 }),
      (mean, shape, count) => {
        expect(chanceAtMost(poisson(mean), count)).toBeCloseTo(jstat.poisson.cdf(count, mean), 8)
        const success = shape / (shape + mean)
        expect(chanceAtMost({ mean, shape }, count)).toBeCloseTo(
          jstat.negbin.cdf(count, shape, success),
          6,
        )
      },
    ),
    { numRuns: 60, seed: 41 },
  )
})

test('a quantile is the smallest count whose chance reaches the level', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.5, max: 400, noNaN: true }),
      fc.double({ min: 0.5, max: 50, noNaN: true }),
      fc.double({ min: 0.05, max: 0.99, noNaN: true }),
      (mean, shape, level) => {
        for (const demand of [{ mean, shape }, poisson(mean)]) {
          const stock = stockFor(demand, level)
          expect(chanceAtMost(demand, stock)).toBeGreaterThanOrEqual(level - 1e-9)
          if (stock > 0) expect(chanceAtMost(demand, stock - 1)).toBeLessThan(level + 1e-9)
        }
      },
    ),
    { numRuns: 200, seed: 42 },
  )
})
