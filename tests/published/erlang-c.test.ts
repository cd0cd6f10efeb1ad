/**
 * Waiting in the steady state against published M/M/c figures. Sources stand beside each check; values
 * marked as exact are fractions that follow from Erlang's formula by hand.
 */
import { describe, expect, test } from 'vitest'
import {
  chanceOfWaitOver,
  fluidWait,
  type Load,
  serversFor,
  steadyLine,
} from '../../electron/station/erlang-c.ts'

/** The steady state; rates are a unit of time, whatever the source's unit is. */
function steady(arrivals: number, service: number, servers: number) {
  const line = steadyLine({ arrivals, service, servers })
  if (line.is !== 'steady') throw new Error('no steady state')
  return line
}

test('the multiple-server template of a Cengage textbook: 10 an hour, 12 an hour each', () => {
  const published = [
    { servers: 2, waiting: 0.175, wait: 0.018, chance: 0.245 },
    { servers: 3, waiting: 0.022, wait: 0.002, chance: 0.058 },
    { servers: 4, waiting: 0.003, wait: 0, chance: 0.011 },
    { servers: 5, waiting: 0, wait: 0, chance: 0.002 },
  ]
  for (const { servers, waiting, wait, chance } of published) {
    const line = steady(10, 12, servers)
    expect(line.waiting).toBeCloseTo(waiting, 3)
    expect(line.meanWait).toBeCloseTo(wait, 3)
    expect(line.chanceOfWait).toBeCloseTo(chance, 3)
  }
})

test('Heizer & Render, Operations Management, module D: two mechanics, 2 an hour, 3 an hour each', () => {
  // In the system on average .75, of which 2/3 are being served (coursehero.com/file/8871054).
  expect(steady(2, 3, 2).waiting + 2 / 3).toBeCloseTo(0.75, 6)
  expect(steady(2, 3, 2).meanWait * 60).toBeCloseTo(2.5, 6)
  expect(steady(2, 3, 1).waiting).toBeCloseTo(4 / 3, 6)
  expect(steady(2, 3, 1).meanWait).toBeCloseTo(2 / 3, 6)
})

test('Adan & Resing, Queueing Systems, table of M/M/c at nine tenths of capacity', () => {
  const published = [
    { servers: 1, chance: 0.9, wait: 9 },
    { servers: 2, chance: 0.85, wait: 4.26 },
    { servers: 5, chance: 0.76, wait: 1.53 },
    { servers: 10, chance: 0.67, wait: 0.67 },
    { servers: 20, chance: 0.55, wait: 0.28 },
  ]
  for (const { servers, chance, wait } of published) {
    const line = steady(0.9 * servers, 1, servers)
    expect(Math.abs(line.chanceOfWait - chance)).toBeLessThan(0.006)
    expect(Math.abs(line.meanWait - wait)).toBeLessThan(0.006)
  }
})

test('a call centre: 360 calls in half an hour, four minutes each, 55 agents', () => {
  // Published worked example: P(wait) .2387, mean 8.18 s, within 15 s .8459, within 20 s .8668.
  const load: Load = { arrivals: 12, service: 1 / 4, servers: 55 }
  const line = steady(12, 1 / 4, 55)
  expect(line.chanceOfWait).toBeCloseTo(0.2387, 4)
  expect(line.meanWait * 60).toBeCloseTo(8.184, 2)
  expect(1 - chanceOfWaitOver(load, 15 / 60)).toBeCloseTo(0.84588, 4)
  expect(1 - chanceOfWaitOver(load, 20 / 60)).toBeCloseTo(0.8668, 4)
  expect(1 - chanceOfWaitOver({ ...load, servers: 54 }, 20 / 60)).toBeCloseTo(0.81725, 4)
})

test('120 an hour, three minutes each, ten servers: about one in ten waits (published Erlang C curve)', () => {
  const line = steady(2, 1 / 3, 10)
  expect(line.chanceOfWait).toBeCloseTo(0.1, 2)
  expect(line.meanWait).toBeCloseTo(0.075974, 5)
})

test('exact fractions by hand', () => {
  const exact: [load: number, servers: number, chance: number][] = [
    [1, 2, 1 / 3],
    [2, 3, 4 / 9],
    [3, 4, 27 / 53],
    [3, 5, 0.236154],
    [4, 5, 0.554113],
    [8, 10, 0.40918],
    [10, 12, 0.449388],
  ]
  for (const [load, servers, chance] of exact)
    expect(steady(load, 1, servers).chanceOfWait).toBeCloseTo(chance, 5)
  expect(steady(2, 1, 3).waiting).toBeCloseTo(8 / 9, 10)
})

describe('where more comes than can be worked', () => {
  test('the line grows without limit, and no figure turns negative', () => {
    for (const servers of [1, 2])
      expect(steadyLine({ arrivals: 2, service: 1, servers })).toEqual({
        is: 'grows',
        growth: 2 - servers,
      })
    expect(steadyLine({ arrivals: 2, service: 1, servers: 0 }).is).toBe('grows')
    expect(chanceOfWaitOver({ arrivals: 2, service: 1, servers: 2 }, 60)).toBe(1)
  })

  test('a fluid estimate says what one who comes later waits', () => {
    // 13 an hour against 2 samplers of 6 an hour: one more waits each hour (common practice, no source).
    const load = { arrivals: 13 / 60, service: 6 / 60, servers: 2 }
    expect(fluidWait(load, 4, 120)).toBeCloseTo((4 + 2) / (12 / 60), 9)
    expect(fluidWait({ ...load, servers: 4 }, 4, 120)).toBe(0)
  })
})

test('the fewest samplers for a target are enough, and one fewer is not', () => {
  const load = { arrivals: 13 / 60, service: 6 / 60 }
  const servers = serversFor(load, 10)
  expect(chanceOfWaitOver({ ...load, servers }, 10)).toBeLessThanOrEqual(0.5)
  expect(chanceOfWaitOver({ ...load, servers: servers - 1 }, 10)).toBeGreaterThan(0.5)
  expect(serversFor({ arrivals: 0, service: 1 }, 10)).toBe(1)
})
