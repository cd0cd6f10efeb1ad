/** What must hold of detection, intervals and weights whatever the numbers. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type Design,
  infectedAtDesign,
  neededFor,
  probabilityOfDetection,
} from '../../electron/station/detection.ts'
import { clopperPearson, exactUpperBound, wilson } from '../../electron/station/proportion.ts'
import { moreNeeded, pointsOf, weightedDetection } from '../../electron/station/weights.ts'

const share = fc.double({ min: 0.001, max: 0.5, noNaN: true })
const sensitivity = fc.oneof(fc.constant(1), fc.double({ min: 0.3, max: 1, noNaN: true }))
const design: fc.Arbitrary<Design> = fc.record({ prevalence: share, sensitivity })
const confidence = fc.constantFrom(0.5, 0.9, 0.95, 0.99)
const herd = fc.oneof(fc.constant(null), fc.integer({ min: 1, max: 1500 }))

/** A herd with two numbers of animals tested, the smaller first. */
const twoSamples = herd.chain((size) =>
  fc
    .tuple(fc.nat({ max: size ?? 2000 }), fc.nat({ max: size ?? 2000 }))
    .map(([a, b]) => ({ size, few: Math.min(a, b), many: Math.max(a, b) })),
)

const close = 1e-9

describe('the probability of detection', () => {
  test('is a probability, nothing without samples, and never falls with more samples', () => {
    fc.assert(
      fc.property(twoSamples, design, ({ size, few, many }, of) => {
        expect(probabilityOfDetection(0, size, of)).toBeCloseTo(0, 12)
        const [less, more] = [few, many].map((n) => probabilityOfDetection(n, size, of))
        expect(less).toBeGreaterThanOrEqual(-close)
        expect(more).toBeLessThanOrEqual(1 + close)
        expect(more).toBeGreaterThanOrEqual((less ?? 0) - close)
      }),
    )
  })

  test('never falls with more infected animals or a better test', () => {
    fc.assert(
      fc.property(twoSamples, design, design, ({ size, many }, a, b) => {
        const worse = {
          prevalence: Math.min(a.prevalence, b.prevalence),
          sensitivity: Math.min(a.sensitivity, b.sensitivity),
        }
        const better = {
          prevalence: Math.max(a.prevalence, b.prevalence),
          sensitivity: Math.max(a.sensitivity, b.sensitivity),
        }
        expect(probabilityOfDetection(many, size, better)).toBeGreaterThanOrEqual(
          probabilityOfDetection(many, size, worse) - close,
        )
      }),
    )
  })

  test('is never less for a herd that ends than for one without end: the binomial claims too little', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 800 }), fc.nat({ max: 800 }), design, (size, n, of) => {
        const tested = Math.min(n, size)
        expect(probabilityOfDetection(tested, size, of)).toBeGreaterThanOrEqual(
          probabilityOfDetection(tested, null, of) - close,
        )
      }),
    )
  })
})

test('the number needed is the smallest that reaches the confidence, or none does', () => {
  fc.assert(
    fc.property(herd, design, confidence, (size, of, wanted) => {
      const needed = neededFor(wanted, size, of)
      if (needed === null) {
        expect(size).not.toBeNull()
        expect(probabilityOfDetection(size ?? 0, size, of)).toBeLessThan(wanted)
        return
      }
      expect(probabilityOfDetection(needed, size, of)).toBeGreaterThanOrEqual(wanted)
      if (needed > 0) expect(probabilityOfDetection(needed - 1, size, of)).toBeLessThan(wanted)
    }),
  )
})

test('infected animals at the design prevalence: the fewest that make it, never none', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 20_000 }), share, (size, prevalence) => {
      const infected = infectedAtDesign(size, prevalence)
      expect(infected).toBeGreaterThanOrEqual(1)
      expect(infected / size).toBeGreaterThanOrEqual(prevalence - close)
      if (infected > 1) expect((infected - 1) / size).toBeLessThan(prevalence)
    }),
  )
  expect(infectedAtDesign(100, 0.07)).toBe(7)
})

describe('at the edges', () => {
  test('a design prevalence of nothing, or a test that never shows, is no design', () => {
    for (const of of [
      { prevalence: 0, sensitivity: 1 },
      { prevalence: 0.01, sensitivity: 0 },
      { prevalence: 1.1, sensitivity: 1 },
      { prevalence: Number.NaN, sensitivity: 1 },
    ])
      expect(() => probabilityOfDetection(1, null, of)).toThrow(RangeError)
  })

  test('where every animal is infected one sample is enough, if the test shows it', () => {
    expect(neededFor(0.99, null, { prevalence: 1, sensitivity: 1 })).toBe(1)
    expect(neededFor(0.99, 30, { prevalence: 1, sensitivity: 1 })).toBe(1)
    expect(probabilityOfDetection(3, 30, { prevalence: 1, sensitivity: 0.5 })).toBeCloseTo(
      0.875,
      12,
    )
  })

  test('more animals tested than the herd has cannot be', () => {
    expect(() => probabilityOfDetection(11, 10, { prevalence: 0.1, sensitivity: 1 })).toThrow(
      RangeError,
    )
  })
})

const counted = fc
  .tuple(fc.nat({ max: 2000 }), fc.nat({ max: 2000 }))
  .map(([a, b]) => ({ count: Math.min(a, b), of: Math.max(a, b) }))
  .filter(({ of }) => of > 0)

test('both intervals hold the share itself; the exact one holds its bound for none', () => {
  fc.assert(
    fc.property(counted, ({ count, of }) => {
      for (const { low, high } of [wilson(count, of), clopperPearson(count, of)]) {
        expect(low).toBeGreaterThanOrEqual(0)
        expect(low).toBeLessThanOrEqual(count / of + close)
        expect(high).toBeGreaterThanOrEqual(count / of - close)
        expect(high).toBeLessThanOrEqual(1)
      }
      expect(exactUpperBound(0, of)).toBeCloseTo(1 - 0.05 ** (1 / of), 9)
    }),
  )
})

test('a count beyond the whole is no share', () => {
  expect(() => wilson(3, 2)).toThrow(RangeError)
  expect(() => clopperPearson(1.5, 2)).toThrow(RangeError)
  expect(wilson(0, 0)).toEqual({ low: 0, high: 1 })
})

const classes = fc.array(
  fc.record({
    tested: fc.nat({ max: 300 }),
    weight: fc.double({ min: 0.05, max: 20, noNaN: true }),
  }),
  { maxLength: 6 },
)

describe('weighted classes', () => {
  test('weights of 1 are the plain binomial', () => {
    fc.assert(
      fc.property(fc.array(fc.nat({ max: 200 }), { maxLength: 6 }), design, (counts, of) => {
        const all = counts.map((tested) => ({ tested, weight: 1 }))
        const tested = counts.reduce((sum, each) => sum + each, 0)
        expect(weightedDetection(all, of)).toBeCloseTo(probabilityOfDetection(tested, null, of), 9)
        expect(pointsOf(all)).toBe(tested)
      }),
    )
  })

  test('the number still needed is the smallest that reaches the confidence', () => {
    fc.assert(
      fc.property(classes, design, confidence, (tested, of, wanted) => {
        const more = moreNeeded(tested, 1, wanted, of)
        const withMore = (count: number) =>
          weightedDetection([...tested, { tested: count, weight: 1 }], of)
        expect(more).not.toBeNull()
        expect(withMore(more ?? 0)).toBeGreaterThanOrEqual(wanted - close)
        if (more !== null && more > 0) expect(withMore(more - 1)).toBeLessThan(wanted + close)
      }),
    )
  })
})
