/**
 * Detection of disease and prevalence against published tables and worked examples. A source stands
 * beside each check; "from memory" where its own text was not at hand.
 */
import jstat from 'jstat'
import { describe, expect, test } from 'vitest'
import { type Design, neededFor, probabilityOfDetection } from '../../electron/station/detection.ts'

const perfect = (prevalence: number): Design => ({ prevalence, sensitivity: 1 })

/** Cannon RM, Roe RT 1982, Livestock Disease Surveys (as printed at carrsconsulting.com/thepig, with the slip in its exponent put right). */
function cannonRoe(herd: number, infected: number, confidence: number): number {
  return (1 - (1 - confidence) ** (1 / infected)) * (herd - (infected - 1) / 2)
}

describe('samples needed from a herd of known size', () => {
  const herds = [
    [50, 1, 0.95, 48],
    [100, 1, 0.95, 95],
    [100, 5, 0.95, 45],
    [100, 10, 0.95, 25],
    [200, 2, 0.95, 155],
    [300, 3, 0.95, 189],
    [500, 5, 0.95, 225],
    [500, 25, 0.95, 56],
    [1000, 10, 0.95, 258],
    [1000, 50, 0.95, 57],
    [2000, 20, 0.95, 277],
    [5000, 50, 0.95, 290],
    [10_000, 100, 0.95, 294],
    [1000, 10, 0.99, 368],
    [1600, 16, 0.99, 399],
    [10_000, 100, 0.99, 448],
  ] as const

  test.each(herds)(
    'Cannon & Roe: %i animals, %i infected, confidence %d: %i samples',
    (herd, infected, confidence, samples) => {
      expect(Math.ceil(cannonRoe(herd, infected, confidence))).toBe(samples)
      expect(neededFor(confidence, herd, perfect(infected / herd))).toBe(samples)
    },
  )

  test('MacDiarmid 1988 (from memory) asks for up to three more, so the method is named on screen', () => {
    const macDiarmid = (herd: number, infected: number, confidence: number) =>
      Math.ceil(herd * (1 - (1 - confidence) ** (1 / infected)))
    for (const [herd, infected, confidence, samples] of herds) {
      const more = macDiarmid(herd, infected, confidence) - samples
      expect(more).toBeGreaterThanOrEqual(0)
      expect(more).toBeLessThanOrEqual(3)
    }
    expect(macDiarmid(200, 2, 0.95)).toBe(156)
    expect(macDiarmid(5000, 50, 0.95)).toBe(291)
  })
})

describe('samples needed from a herd without end', () => {
  // Infinite-population column of sample-size tables such as Cannon & Roe's: ln(1-CL)/ln(1-p), rounded
  // up (values from memory, recomputed).
  const tables: readonly (readonly [number, readonly (readonly [number, number])[]])[] = [
    [
      0.9,
      [
        [0.001, 2302],
        [0.005, 460],
        [0.01, 230],
        [0.02, 114],
        [0.05, 45],
        [0.1, 22],
      ],
    ],
    [
      0.95,
      [
        [0.001, 2995],
        [0.005, 598],
        [0.01, 299],
        [0.02, 149],
        [0.05, 59],
        [0.1, 29],
      ],
    ],
    [
      0.99,
      [
        [0.001, 4603],
        [0.005, 919],
        [0.01, 459],
        [0.02, 228],
        [0.05, 90],
        [0.1, 44],
      ],
    ],
  ]
  test.each(tables)('confidence %d', (confidence, rows) => {
    for (const [prevalence, samples] of rows)
      expect(neededFor(confidence, null, perfect(prevalence))).toBe(samples)
  })

  test('Beef Practice: Cow-Calf Production Medicine, page 48: 22 samples at 10%, 90% confidence', () => {
    expect(neededFor(0.9, null, perfect(0.1))).toBe(22)
    expect(1 - probabilityOfDetection(22, null, perfect(0.1))).toBeCloseTo(0.098, 3)
  })

  test('North Dakota 2004: the published goal of 458 was rounded down and misses 99% by a little', () => {
    // cwd-info.org, "Hunter-harvested surveillance program reaches goal for 2004"
    expect(probabilityOfDetection(458, null, perfect(0.01))).toBeLessThan(0.99)
    expect(probabilityOfDetection(458, null, perfect(0.01))).toBeCloseTo(0.99, 3)
    expect(neededFor(0.99, null, perfect(0.01))).toBe(459)
  })

  test('Maryland 2005: 872 deer, 98% at 1% in either of two populations', () => {
    // wildlifedisease.blogspot.com, June 2005
    expect(probabilityOfDetection(872 / 2, null, perfect(0.01))).toBeGreaterThan(0.98)
    expect(probabilityOfDetection(872 / 2, null, perfect(0.01))).toBeCloseTo(0.9875, 4)
  })
})

describe('a test that misses some', () => {
  test('the sensitivity published for retropharyngeal nodes: 299 samples are no longer enough', () => {
    // Hibler et al. 2003, J Vet Diagn Invest 15(4): ELISA 98.3 to 100% on retropharyngeal nodes, 92.1 on obex
    expect(
      probabilityOfDetection(299, null, { prevalence: 0.01, sensitivity: 0.983 }),
    ).toBeLessThan(0.95)
    expect(neededFor(0.95, null, { prevalence: 0.01, sensitivity: 0.983 })).toBe(304)
    expect(neededFor(0.95, null, { prevalence: 0.01, sensitivity: 0.921 })).toBe(324)
  })

  test('worked example of herd sensitivity: half a herd of 100 tested, one infected, Se 0.92: 0.46', () => {
    // One infected animal is among the 50 with chance 1/2 and shows with 0.92: exact, by hand.
    const one = { prevalence: 0.01, sensitivity: 0.92 }
    expect(probabilityOfDetection(50, 100, one)).toBeCloseTo(0.46, 12)
    // Two infected, Se 0.8: by hand 1 - (C(98,50) + 2*C(98,49)*0.2 + C(98,48)*0.04) / C(100,50) = 0.641616...;
    // the approximation 1-(1-n*Se/N)^D gives 0.64.
    expect(probabilityOfDetection(50, 100, { prevalence: 0.02, sensitivity: 0.8 })).toBeCloseTo(
      0.641616,
      6,
    )
  })

  test('Cameron & Baldock 1998, modified hypergeometric with perfect specificity (values recomputed)', () => {
    expect(neededFor(0.95, 500, { prevalence: 0.01, sensitivity: 0.9 })).toBe(250)
    expect(neededFor(0.95, 500, { prevalence: 0.01, sensitivity: 0.8 })).toBe(281)
    expect(neededFor(0.95, 80, { prevalence: 2 / 80, sensitivity: 0.8 })).toBe(78)
    expect(neededFor(0.95, 80, { prevalence: 5 / 80, sensitivity: 0.8 })).toBe(45)
    expect(neededFor(0.95, 80, { prevalence: 10 / 80, sensitivity: 0.8 })).toBe(25)
  })
})

test('the hypergeometric sum of another library, jStat, gives the same probability', () => {
  for (const [herd, infected, tested, sensitivity] of [
    [60, 3, 20, 1],
    [60, 3, 20, 0.9],
    [250, 5, 90, 0.983],
    [500, 10, 120, 0.8],
    [1000, 20, 150, 0.95],
  ] as const) {
    let miss = 0
    for (let x = 0; x <= Math.min(infected, tested); x += 1)
      miss += jstat.hypgeom.pdf(x, herd, infected, tested) * (1 - sensitivity) ** x
    expect(
      probabilityOfDetection(tested, herd, { prevalence: infected / herd, sensitivity }),
    ).toBeCloseTo(1 - miss, 8)
  }
})
