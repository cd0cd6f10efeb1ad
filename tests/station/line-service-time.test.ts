import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { usualLineSettings } from '../../electron/station/line-settings.ts'
import {
  beliefIn,
  learn,
  loosened,
  paces,
  usualMinutesOf,
  type WorkTime,
  workKindOf,
} from '../../electron/station/service-time.ts'
import { workTimes } from '../../electron/station/work-times.ts'
import { factsOf } from '../support/station.ts'
import { minutes, morning } from './records.ts'

const work = (sampler: string, kind: WorkTime['kind'], ...each: number[]): WorkTime[] =>
  each.map((took) => ({ sampler, kind, minutes: took }))

describe('how long a sampler takes', () => {
  test('begins with what the station settled', () => {
    const pace = paces(usualLineSettings, [])('ines')
    expect(usualMinutesOf(pace.deer)).toBeCloseTo(usualLineSettings.usualMinutes.deer, 9)
    expect(usualMinutesOf(pace['elk-or-moose-damaged'])).toBeCloseTo(
      usualLineSettings.usualMinutes.elkOrMoose * usualLineSettings.damagedHeadTimes,
      9,
    )
  })

  test('is learned from their own work before that of others', () => {
    const times = [...work('ines', 'deer', 4, 4, 4, 4, 4), ...work('bram', 'deer', 9, 9, 9, 9, 9)]
    const paceOf = paces(usualLineSettings, times)
    const [ines, bram, newcomer] = ['ines', 'bram', 'cora'].map((name) =>
      usualMinutesOf(paceOf(name).deer),
    )
    expect(ines).toBeLessThan(5.5)
    expect(bram).toBeGreaterThan(6.5)
    expect(newcomer).toBeGreaterThan(ines ?? 0)
    expect(newcomer).toBeLessThan(bram ?? 0)
  })

  test('of deer is not touched by an elk, however slow', () => {
    const slow = work('ines', 'elk-or-moose', 120)
    expect(paces(usualLineSettings, slow)('ines').deer).toEqual(
      paces(usualLineSettings, [])('ines').deer,
    )
  })

  test('is not upset by one animal forgotten over lunch', () => {
    const usual = work('ines', 'elk-or-moose', 9, 10, 8)
    const before = usualMinutesOf(paces(usualLineSettings, usual)('ines')['elk-or-moose'])
    const forgotten = [...usual, ...work('ines', 'elk-or-moose', 240)]
    const after = usualMinutesOf(paces(usualLineSettings, forgotten)('ines')['elk-or-moose'])
    expect(after).toBeGreaterThan(before)
    expect(after).toBeLessThan(1.3 * before)
  })

  test('after many animals is what they took, whatever was settled', () => {
    const many = Array.from({ length: 60 }, () => 12)
    expect(usualMinutesOf(learn(beliefIn(11), many))).toBeCloseTo(12, 1)
  })

  test('learned one by one or all at once comes to the same belief', () => {
    // Conjugate: the order and grouping of what is seen does not matter (no time here is drawn in).
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 4, max: 9, noNaN: true }), { minLength: 1, maxLength: 12 }),
        (times) => {
          const whole = learn(beliefIn(6), times)
          const singly = times.reduce((belief, each) => learn(belief, [each]), beliefIn(6))
          for (const part of ['mean', 'weight', 'shape', 'scale'] as const)
            expect(singly[part]).toBeCloseTo(whole[part], 6)
        },
      ),
      { seed: 3 },
    )
  })

  test('Murphy 2007, section 6: two observations updated by hand', () => {
    // k0 2, a0 3, b0 .24, m0 ln 6; times e and e^2, so logs 1 and 2: mean 1.5, squares .5.
    const updated = learn(beliefIn(6), [Math.E, Math.E ** 2])
    const before = Math.log(6)
    expect(updated.weight).toBe(4)
    expect(updated.shape).toBe(4)
    expect(updated.mean).toBeCloseTo((2 * before + 3) / 4, 12)
    expect(updated.scale).toBeCloseTo(0.24 + 0.25 + (2 * 2 * (1.5 - before) ** 2) / (2 * 4), 12)
  })

  test('as others took it is held less firmly than one’s own', () => {
    const crew = learn(beliefIn(6), [5, 5, 5, 5, 5, 5, 5, 5])
    expect(loosened(crew).mean).toBe(crew.mean)
    expect(loosened(crew).weight).toBe(4)
    const spread = ({ scale, shape }: typeof crew) => scale / (shape - 1)
    expect(spread(loosened(crew))).toBeCloseTo(spread(crew), 12)
  })

  test('of a damaged head is another kind than of a whole one', () => {
    const head = { presented: 'head-only' as const, faults: ['skull-plate-cut' as const] }
    expect(workKindOf(factsOf())).toBe('deer')
    expect(workKindOf(factsOf({ head }))).toBe('deer-damaged')
    expect(workKindOf(factsOf({ species: 'moose', head }))).toBe('elk-or-moose-damaged')
  })
})

describe('the day’s work is timed', () => {
  const worked = (arrived: number, assigned: number, finished: number | null) => ({
    ...factsOf(),
    sampler: 'ines',
    arrivedMs: morning + minutes(arrived),
    assignedMs: morning + minutes(assigned),
    finishedMs: finished === null ? null : morning + minutes(finished),
  })

  test('from being taken to being finished, and from one to the next', () => {
    expect(workTimes([worked(0, 5, 12), worked(3, 14, 20), worked(30, 31, 38)])).toEqual([
      { sampler: 'ines', kind: 'deer', minutes: 7 },
      { sampler: 'ines', kind: 'between', minutes: 2 },
      { sampler: 'ines', kind: 'deer', minutes: 6 },
      { sampler: 'ines', kind: 'calling', minutes: 1 },
      { sampler: 'ines', kind: 'deer', minutes: 7 },
    ])
  })

  test('of several in hand each from when the one before was finished', () => {
    expect(workTimes([worked(0, 5, 12), worked(0, 6, 20), worked(0, 25, null)])).toEqual([
      { sampler: 'ines', kind: 'deer', minutes: 7 },
      { sampler: 'ines', kind: 'deer', minutes: 8 },
      { sampler: 'ines', kind: 'between', minutes: 5 },
    ])
  })
})
