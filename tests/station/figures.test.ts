import { describe, expect, test } from 'vitest'
import {
  type AnimalFigures,
  dayTotals,
  minutesOfWork,
  quantile,
  waits,
} from '../../electron/station/figures.ts'
import { minutes, morning, sampler } from './records.ts'

const waiting: AnimalFigures = {
  state: 'waiting',
  outcome: null,
  arrivedMs: morning,
  assignedMs: null,
  finishedMs: null,
  sampler: null,
}

/** An animal that waited and was worked for so many minutes. */
function worked(waited: number, work: number, outcome: 'both' | 'one' | 'none' = 'both') {
  const assignedMs = morning + minutes(waited)
  return {
    ...waiting,
    state: 'finished',
    outcome,
    assignedMs,
    finishedMs: assignedMs + minutes(work),
    sampler: sampler.person,
  } as const
}

test('every animal of a day stands in exactly one place', () => {
  const states = ['waiting', 'with-sampler', 'left', 'recorded'] as const
  const animals = [
    ...states.map((state) => ({ ...waiting, state })),
    worked(5, 4),
    worked(5, 4, 'one'),
    worked(5, 4, 'none'),
    worked(5, 4),
  ]
  const totals = dayTotals(animals)
  expect(totals).toEqual({
    checkedIn: 8,
    waiting: 1,
    withSampler: 1,
    finished: 4,
    outcomes: { both: 2, one: 1, none: 1 },
    left: 1,
    recorded: 1,
  })
  const { waiting: line, withSampler, finished, left, recorded } = totals
  expect(line + withSampler + finished + left + recorded).toBe(totals.checkedIn)
})

test('an animal whose hunter left keeps no outcome in the totals', () => {
  const { outcomes } = dayTotals([{ ...worked(1, 1), state: 'left' }])
  expect(outcomes).toEqual({ both: 0, one: 0, none: 0 })
})

test('waits count the animals that reached a sampler, and work those that were finished', () => {
  const animals = [worked(10, 4), worked(20, 6), worked(60, 5), waiting]
  expect(waits(animals)).toEqual({ medianMinutes: 20, ninetiethMinutes: 52 })
  expect(minutesOfWork([...animals, { ...waiting, assignedMs: morning }])).toEqual([4, 6, 5])
  expect(waits([waiting])).toEqual({ medianMinutes: null, ninetiethMinutes: null })
})

describe('a quantile is type 7 of Hyndman & Fan', () => {
  const upTo = (count: number) => Array.from({ length: count }, (_, at) => at + 1)

  // P. Dalgaard, r-help, 20 February 1998 (stat.ethz.ch/pipermail/r-help/1998-February/002126.html):
  // the quartiles of 1:10, and the 60 % quantile of 1:100, by the method R calls type 7.
  test('with the quartiles that R gives for 1 to 10, and 60.4 of 1 to 100', () => {
    const quartiles = [0, 0.25, 0.5, 0.75, 1].map((share) => quantile(upTo(10), share))
    expect(quartiles).toEqual([1, 3.25, 5.5, 7.75, 10])
    expect(quantile(upTo(100), 0.6)).toBeCloseTo(60.4, 9)
  })

  // The worked example of PERCENTILE in the Gnumeric manual.
  test('with 20.02 at 42 % of 11.4, 17.3, 21.3, 25.9, 40.1', () => {
    expect(quantile([25.9, 11.4, 40.1, 17.3, 21.3], 0.42)).toBeCloseTo(20.02, 9)
  })

  // Hyndman & Fan, "Sample Quantiles in Statistical Packages", The American Statistician 50(4),
  // 1996, definition 7: m = 1 - p, j = floor(np + m), g = np + m - j, Q = (1 - g) x(j) + g x(j + 1).
  test('by its definition', () => {
    const waited = [3, 8, 8, 13, 21, 34, 55]
    for (const p of [0.05, 0.1, 1 / 3, 0.5, 0.9, 0.99]) {
      const place = waited.length * p + (1 - p)
      const [j, g] = [Math.floor(place), place - Math.floor(place)]
      const defined = (1 - g) * (waited[j - 1] ?? 0) + g * (waited[j] ?? 0)
      expect(quantile(waited, p)).toBeCloseTo(defined, 9)
    }
  })

  test('of nothing is nothing, and of one number that number', () => {
    expect(quantile([], 0.5)).toBeNull()
    expect([0, 0.5, 1].map((share) => quantile([7], share))).toEqual([7, 7, 7])
  })
})
