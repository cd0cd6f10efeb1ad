/** The simulated line against the steady state of the textbooks, within the simulation's own error. */
import { describe, expect, test } from 'vitest'
import { drawsOf } from '../../electron/station/draws.ts'
import { steadyLine } from '../../electron/station/erlang-c.ts'
import {
  type AnimalHere,
  type Scenario,
  type SimulatedSampler,
  simulateLine,
} from '../../electron/station/line-simulation.ts'
import type { Belief, Pace } from '../../electron/station/service-time.ts'

const draws = drawsOf(5)

/** Times known for certain: a lognormal whose variance is its mean squared, as an exponential's is. */
function known(mean: number, variation = 1): Belief {
  const variance = Math.log(1 + variation ** 2)
  return { mean: Math.log(mean) - variance / 2, weight: 1e12, shape: 1e9, scale: variance * 1e9 }
}

const paceOf = (mean: number, variation?: number): Pace => ({
  deer: known(mean, variation),
  'deer-damaged': known(mean, variation),
  'elk-or-moose': known(2 * mean, variation),
  'elk-or-moose-damaged': known(2 * mean, variation),
  between: known(1e-6, 0.1),
  calling: known(1e-6, 0.1),
})

const sampler = (changed: Partial<SimulatedSampler> = {}): SimulatedSampler => ({
  skills: 7,
  pace: paceOf(1),
  from: 0,
  until: Infinity,
  inHand: [],
  since: 0,
  ...changed,
})

const animal = (changed: Partial<AnimalHere> = {}): AnimalHere => ({
  kind: 'deer',
  needs: 1,
  rank: 1,
  overtaken: 0,
  waited: 0,
  ...changed,
})

const scenario = (changed: Partial<Scenario>): Scenario => ({
  here: [],
  samplers: [sampler()],
  coming: null,
  overtakenAtMost: 5,
  leaving: 0,
  followComing: false,
  runs: 64,
  ...changed,
})

/** Mean wait of a long steady stretch, and its standard error over runs. */
function steadyWait(load: number, servers: number) {
  const total = 3000
  const minutes = total / (load * 1)
  const { later } = simulateLine(
    scenario({
      samplers: Array.from({ length: servers }, () => sampler()),
      coming: {
        shape: 1e12,
        rate: 1e12 / total,
        shareNow: 0,
        minutesUntil: (share) => share * minutes,
        kinds: [{ kind: 'deer', needs: 1, rank: 1 }],
      },
      followComing: true,
      runs: 40,
    }),
    draws,
  )
  const runs: number[][] = []
  let before = Infinity
  for (const { arrived, wait } of later) {
    if (arrived < before) runs.push([])
    before = arrived
    // The line begins empty: its first quarter is not steady yet.
    if (arrived > minutes / 4) runs.at(-1)?.push(wait)
  }
  const means = runs.map((waits) => waits.reduce((sum, wait) => sum + wait, 0) / waits.length)
  const mean = means.reduce((sum, each) => sum + each, 0) / means.length
  const spread = Math.sqrt(
    means.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (means.length - 1),
  )
  return { mean, error: spread / Math.sqrt(means.length) }
}

describe('a long steady line', () => {
  test('of one sampler waits as Pollaczek and Khinchine say, within three standard errors', () => {
    // M/G/1 with a variance of the mean squared: the mean wait of M/M/1, whatever else the shape is.
    const { mean, error } = steadyWait(0.6, 1)
    const line = steadyLine({ arrivals: 0.6, service: 1, servers: 1 })
    expect(line).toMatchObject({ is: 'steady' })
    expect(Math.abs(mean - (line.is === 'steady' ? line.meanWait : 0))).toBeLessThan(3 * error)
  })

  test.each([
    [1.4, 2],
    [2.4, 3],
    [3.5, 5],
  ])('of load %d and %d samplers waits as Erlang C says, within its errors', (load, servers) => {
    const { mean, error } = steadyWait(load, servers)
    const line = steadyLine({ arrivals: load, service: 1, servers })
    if (line.is !== 'steady') throw new Error('no steady state')
    // Three standard errors, and a tenth because work here is lognormal, not exponential: with equal
    // variance the two differ by a few in a hundred (Lee & Longton's approximation says not at all).
    expect(Math.abs(mean - line.meanWait)).toBeLessThan(3 * error + 0.1 * line.meanWait)
  })
})

describe('the line now', () => {
  test('a free sampler takes the first at once, and the next when that one is done', () => {
    const { waits } = simulateLine(
      scenario({ here: [animal(), animal()], samplers: [sampler({ pace: paceOf(6, 0.01) })] }),
      draws,
    )
    expect(Math.max(...(waits[0] ?? []))).toBeLessThan(0.01)
    for (const wait of waits[1] ?? []) expect(wait).toBeCloseTo(6, 0)
  })

  test('a break and the end of a shift are kept', () => {
    const away = sampler({ from: 20 })
    const { waits: later } = simulateLine(scenario({ here: [animal()], samplers: [away] }), draws)
    for (const wait of later[0] ?? []) expect(wait).toBeGreaterThanOrEqual(20)
    const leaving = sampler({ until: 3, pace: paceOf(6, 0.01) })
    const { waits } = simulateLine(
      scenario({ here: [animal(), animal()], samplers: [leaving] }),
      draws,
    )
    expect(Math.max(...(waits[0] ?? []))).toBeLessThan(0.01)
    expect(Math.min(...(waits[1] ?? []))).toBe(Infinity)
  })

  test('a head that nobody is trained for is never taken', () => {
    const { waits } = simulateLine(
      scenario({ here: [animal({ needs: 2 })], samplers: [sampler({ skills: 1 })] }),
      draws,
    )
    expect(Math.min(...(waits[0] ?? []))).toBe(Infinity)
  })

  test('work in hand that has taken long already is sooner done than work just begun', () => {
    const waitWith = (since: number) => {
      const held = sampler({ pace: paceOf(10, 0.3), inHand: ['deer'], since })
      const { waits } = simulateLine(scenario({ here: [animal()], samplers: [held] }), draws)
      const all = [...(waits[0] ?? [])]
      return all.reduce((sum, wait) => sum + wait, 0) / all.length
    }
    expect(waitWith(0)).toBeGreaterThan(9)
    expect(waitWith(8)).toBeLessThan(5)
  })

  test('what was waited before now is part of the wait', () => {
    const { waits } = simulateLine(scenario({ here: [animal({ waited: 30 })] }), draws)
    for (const wait of waits[0] ?? []) expect(wait).toBeCloseTo(30, 1)
  })

  test('the same seed gives the same answer', () => {
    const of = scenario({ here: [animal(), animal(), animal()] })
    expect(simulateLine(of, drawsOf(5))).toEqual(simulateLine(of, drawsOf(5)))
    expect(simulateLine(of, drawsOf(5))).not.toEqual(simulateLine(of, drawsOf(6)))
  })
})
