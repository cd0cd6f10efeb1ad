import { describe, expect, test } from 'vitest'
import { type ObstacleView, obstaclesOf } from '../../electron/station/line-needs.ts'
import type { Waiting } from '../../electron/station/line-order.ts'
import { factsOf } from '../support/station.ts'
import { animal, minutes, morning } from './records.ts'

const waiting = (changed: Partial<Waiting> = {}): Waiting => ({
  animal: animal(),
  rank: 1,
  needs: 1,
  overtaken: 0,
  ...changed,
})
const ines = { name: 'Ines Tarr', skills: 1, duty: 'on' as const, kits: 4 }
const view = (changed: Partial<ObstacleView>): ObstacleView => ({
  line: [waiting()],
  people: [ines],
  nowMs: morning,
  lastMs: morning,
  ...changed,
})

function only(changed: Partial<ObstacleView>) {
  const [need, ...others] = obstaclesOf(view(changed))
  expect(others).toEqual([])
  expect(need?.next).toMatch(/^[A-Z].*\.$/)
  return need
}

describe('what stands in the way of the line', () => {
  test('nothing, where somebody can work with a kit in hand', () => {
    expect(obstaclesOf(view({}))).toEqual([])
  })

  test('nobody on shift', () => {
    expect(only({ people: [] })?.code).toBe('nobody-on-shift')
  })

  test('no training here for a head', () => {
    const elk = animal(2, { facts: factsOf({ species: 'elk' }) })
    const need = only({ line: [waiting(), waiting({ animal: elk, needs: 2 })] })
    expect(need?.code).toBe('no-training-here')
    expect(need?.say).toContain('elk and moose')
  })

  test('no kit in any hand', () => {
    expect(only({ people: [{ ...ines, kits: 0 }] })?.code).toBe('no-kits-at-the-line')
  })

  test('a clock that jumped back, or far ahead while animals wait', () => {
    expect(only({ nowMs: morning - minutes(45) })?.say).toContain('45 minutes earlier')
    expect(only({ nowMs: morning + minutes(26 * 60) })?.code).toBe('clock-jump')
    expect(obstaclesOf(view({ nowMs: morning - minutes(3) }))).toEqual([])
    expect(obstaclesOf(view({ line: [], nowMs: morning + minutes(26 * 60) }))).toEqual([])
  })
})
