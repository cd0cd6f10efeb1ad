import jstat from 'jstat'
import { describe, expect, test } from 'vitest'
import { drawsOf, replications } from '../../electron/station/draws.ts'
import { usualLineSettings } from '../../electron/station/line-settings.ts'
import { paces } from '../../electron/station/service-time.ts'
import { gammaNear } from '../../electron/station/simulated-pace.ts'
import { outlookOf, samplersToAdd } from '../../electron/station/staffing.ts'
import { sayOutlook, saySteady, sayToAdd } from '../../electron/station/staffing-words.ts'
import {
  firstShare,
  forecastWaits,
  heldOf,
  shareToCover,
} from '../../electron/station/wait-forecast.ts'

const draws = drawsOf(11)
const pace = paces(usualLineSettings, [])('anyone')
const deer = { kind: 'deer' as const, needs: 1, rank: 1 as const }
const sampler = { skills: 7, pace, from: 0, until: Infinity, inHand: [], since: 0 }

const line = (waiting: number, samplers: number) => ({
  here: Array.from({ length: waiting }, () => ({ ...deer, overtaken: 0, waited: 0 })),
  samplers: Array.from({ length: samplers }, () => sampler),
  coming: null,
  overtakenAtMost: 5,
  leaving: 0,
})

describe('a wait is forecast', () => {
  test('as a range that four of five simulated waits fall in', () => {
    for (const range of forecastWaits(line(12, 3), draws).slice(3)) {
      expect(range?.low).toBeLessThan(range?.typical ?? 0)
      expect(range?.high).toBeGreaterThan(range?.typical ?? 0)
      // Told in whole minutes, so a little more than four of five.
      expect(range?.chance).toBeGreaterThan(0.78)
      expect(range?.chance).toBeLessThan(0.95)
    }
  })

  test('longer for each who came later, shorter with more samplers', () => {
    const typical = (samplers: number) =>
      forecastWaits(line(9, samplers), draws).map((range) => range?.typical ?? Infinity)
    const [few, many] = [typical(2), typical(4)]
    for (const [place, wait] of few.entries()) {
      if (place > 1) expect(wait).toBeGreaterThan(few[place - 2] ?? 0)
      if (place > 1) expect(wait).toBeGreaterThan(many[place] ?? 0)
    }
  })

  test('as none, where nobody is or will be here', () => {
    expect(forecastWaits(line(2, 0), draws)).toEqual([null, null])
  })

  test('wider after waits that did not hold, narrower after many that did', () => {
    const past = (minutes: number) =>
      Array.from({ length: 8 }, () => ({ low: 5, high: 9, minutes }))
    expect(shareToCover([])).toBe(firstShare)
    expect(shareToCover(past(30))).toBeGreaterThan(0.95)
    expect(shareToCover(past(7))).toBeLessThan(firstShare)
    expect(shareToCover([...past(30), ...past(30)])).toBeLessThan(1)
  })

  test('and held when it fell in the range told, to the whole minute', () => {
    const told = { low: 5, high: 9 }
    const past = [4.4, 4.6, 9.4, 9.6].map((minutes) => ({ ...told, minutes }))
    expect(heldOf(past)).toEqual({ told: 4, held: 2 })
  })
})

test('a gamma variate made from a normal one is near the true one (jStat)', () => {
  for (const shape of [3, 6, 20])
    for (const [share, normal] of [
      [0.1, -1.2815516],
      [0.5, 0],
      [0.9, 1.2815516],
    ] as const)
      expect(gammaNear(shape, normal) / jstat.gamma.inv(share, shape, 1)).toBeCloseTo(1, 1)
})

test('each column of the draws holds every stratum once', () => {
  for (const column of [0, 17, 1023]) {
    const strata = draws.order.slice(column * replications, (column + 1) * replications)
    expect([...strata].toSorted((a, b) => a - b)).toEqual(
      Array.from({ length: replications }, (_, at) => at),
    )
  }
})

describe('samplers for the rest of the day', () => {
  const rest = (samplers: number) => ({
    ...line(4, samplers),
    coming: {
      shape: 60,
      rate: 0.6,
      shareNow: 0,
      minutesUntil: (share: number) => share * 300,
      kinds: [deer],
    },
  })

  test('more of them never make waits longer, and the fewest that suffice are found', () => {
    const typical = (extra: number) =>
      outlookOf(rest(2), [{ count: extra, fromMinutes: 0 }], pace, draws).typical ?? Infinity
    const waits = [0, 1, 2, 3].map(typical)
    for (const [extra, wait] of waits.entries())
      expect(wait).toBeLessThanOrEqual((waits[extra - 1] ?? Infinity) + 0.5)
    const toAdd = samplersToAdd(rest(2), pace, draws, 10) ?? -1
    expect(typical(toAdd)).toBeLessThanOrEqual(10)
    expect(toAdd === 0 || typical(toAdd - 1) > 10).toBe(true)
  })

  test('one who comes later helps less than one from now', () => {
    const typical = (fromMinutes: number) =>
      outlookOf(rest(1), [{ count: 1, fromMinutes }], pace, draws).typical ?? 0
    expect(typical(0)).toBeLessThan(typical(150))
  })

  test('nobody on shift leaves everyone over, and says so', () => {
    const { typical, leftOver } = outlookOf(rest(0), [], pace, draws)
    expect(typical).toBeNull()
    expect(leftOver).toBeGreaterThanOrEqual(4)
    expect(saySteady({ is: 'grows', growth: 0.2 }, 0)).toMatch(/^Nobody is on duty/)
  })

  test('is said in sentences', () => {
    const sentences = [
      sayToAdd(null, 30),
      sayToAdd(0, 30),
      sayToAdd(1, 30),
      saySteady({ is: 'grows', growth: 0.1 }, 2),
      saySteady({ is: 'steady', chanceOfWait: 0.4, waiting: 1, meanWait: 3 }, 2),
      sayOutlook({ typical: 40, leftOver: 3 }, { typical: 12, leftOver: 0 }),
    ]
    for (const sentence of sentences) expect(sentence).toMatch(/^[A-Z0-9][^\n]+\.$/)
    expect(sentences[3]).toContain('without limit')
  })
})
