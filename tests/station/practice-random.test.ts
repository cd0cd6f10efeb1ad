import { describe, expect, test } from 'vitest'
import { Chance, pcg32 } from '../../electron/station/practice/random.ts'

describe('chance that can be had again', () => {
  // Source: pcg-random.org, PCG C library, expected output of the demo program `pcg32-demo` with
  // its fixed seed 42 and stream 54, first line of round 1 (values from memory).
  test('the generator gives the numbers its author publishes for seed 42, stream 54', () => {
    const next = pcg32(42n, 54n)
    const first = Array.from({ length: 6 }, () => next().toString(16).padStart(8, '0'))
    expect(first).toEqual(['a15c02b7', '7b47f409', 'ba1d3330', '83d2f293', 'bfa4784b', 'cbed606e'])
  })

  test('a stream of one seed does not follow another', () => {
    const draws = (stream: number) => {
      const chance = new Chance(7, stream)
      return Array.from({ length: 20 }, () => chance.whole(0, 999))
    }
    expect(draws(1)).toEqual(draws(1))
    expect(draws(1)).not.toEqual(draws(2))
  })

  test('shuffling keeps every one and moves most', () => {
    const list = Array.from({ length: 100 }, (_, place) => place)
    const shuffled = new Chance(3, 1).shuffled(list)
    expect(shuffled.toSorted((a, b) => a - b)).toEqual(list)
    expect(shuffled.filter((each, place) => each === place).length).toBeLessThan(10)
  })

  // Critical value: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4, chi-square with 40
  // degrees of freedom, upper 1%: 63.691.
  test('an outcome comes as often as its weight says, seed after seed', () => {
    const deviation = (seed: number) => {
      const chance = new Chance(seed, 1)
      const drawn = Array.from({ length: 2000 }, () =>
        chance.weighted([
          ['often', 3],
          ['seldom', 1],
        ]),
      )
      const often = drawn.filter((each) => each === 'often').length
      return (often - 1500) ** 2 / (2000 * 0.75 * 0.25)
    }
    const seeds = Array.from({ length: 40 }, (_, place) => place + 1)
    expect(seeds.reduce((sum, seed) => sum + deviation(seed), 0)).toBeLessThan(63.691)
  })
})
