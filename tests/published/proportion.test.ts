/** Intervals for a proportion against published comparisons. A source stands beside each check. */
import jstat from 'jstat'
import { describe, expect, test } from 'vitest'
import { clopperPearson, exactUpperBound, wilson } from '../../electron/station/proportion.ts'

describe('Newcombe 1998, Statistics in Medicine 17:857-872, its four cases at 95% (from memory, recomputed)', () => {
  test.each([
    { count: 81, of: 263, score: [0.2553, 0.3662], exact: [0.2527, 0.3676] },
    { count: 15, of: 148, score: [0.0624, 0.1605], exact: [0.0578, 0.1617] },
    { count: 0, of: 20, score: [0, 0.1611], exact: [0, 0.1684] },
    { count: 1, of: 29, score: [0.0061, 0.1718], exact: [0.0009, 0.1776] },
  ])('$count of $of', ({ count, of, score, exact }) => {
    const [byScore, byExact] = [wilson(count, of), clopperPearson(count, of)]
    expect(byScore.low).toBeCloseTo(score[0] ?? NaN, 4)
    expect(byScore.high).toBeCloseTo(score[1] ?? NaN, 4)
    expect(byExact.low).toBeCloseTo(exact[0] ?? NaN, 4)
    expect(byExact.high).toBeCloseTo(exact[1] ?? NaN, 4)
  })
})

test('NIST/SEMATECH handbook, section 7.2.4.2: 4 of 20, exact 90% (answer from memory)', () => {
  const { low, high } = clopperPearson(4, 20, 0.9)
  expect(low).toBeCloseTo(0.071354, 6)
  expect(high).toBeCloseTo(0.401028, 5)
})

test('Holz et al. 2022, Frontiers in Veterinary Science: 184 of 1,300 positive by ELISA', () => {
  // The counts are published (10.3389/fvets.2021.824815); the intervals were recomputed independently.
  const [score, exact] = [wilson(184, 1300), clopperPearson(184, 1300)]
  expect(score.low).toBeCloseTo(0.123645, 6)
  expect(score.high).toBeCloseTo(0.161545, 6)
  expect(exact.low).toBeCloseTo(0.123032, 6)
  expect(exact.high).toBeCloseTo(0.161681, 6)
})

test('RAMALT samples, J Wildl Dis 60(4):996: 763 of 806 adequate', () => {
  const { low, high } = wilson(763, 806)
  expect(low).toBeCloseTo(0.928909, 6)
  expect(high).toBeCloseTo(0.960154, 6)
})

test('299 clear: only the one-sided bound says "below 1 in 100"', () => {
  expect(exactUpperBound(0, 299)).toBeCloseTo(1 - 0.05 ** (1 / 299), 12)
  expect(exactUpperBound(0, 299)).toBeCloseTo(0.009969, 6)
  expect(clopperPearson(0, 299).high).toBeCloseTo(0.012262, 6)
  expect(wilson(0, 299).high).toBeCloseTo(0.012685, 6)
})

test('the beta quantile of another library, jStat, gives the same exact interval', () => {
  for (const [count, of] of [
    [3, 40],
    [12, 515],
    [250, 900],
  ] as const) {
    const { low, high } = clopperPearson(count, of)
    expect(low).toBeCloseTo(jstat.beta.inv(0.025, count, of - count + 1), 6)
    expect(high).toBeCloseTo(jstat.beta.inv(0.975, count + 1, of - count), 6)
  }
})
