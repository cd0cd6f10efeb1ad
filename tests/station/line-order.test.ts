import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { inTurn, type OrderView, waitingLine } from '../../electron/station/line-order.ts'
import { usualLineSettings } from '../../electron/station/line-settings.ts'
import { everySkill, suffices } from '../../electron/station/skills.ts'
import { airAt } from '../../electron/station/spoiling.ts'
import { type Rank, Turns } from '../../electron/station/turn.ts'
import { factsOf } from '../support/station.ts'
import { animal, date, minutes, morning, person } from './records.ts'

const zone = 'America/Denver'
const view = (changed: Partial<OrderView> = {}): OrderView => ({
  settings: usualLineSettings,
  air: airAt(morning, zone, null),
  nowMs: morning + minutes(60),
  taken: [],
  ...changed,
})
const called = (animals: Parameters<typeof waitingLine>[0], seen = view()) =>
  inTurn(waitingLine(animals, seen), seen.settings).map(({ animal: { animal: number } }) => number)

describe('the line is worked', () => {
  const voluntary = animal(1, { facts: factsOf({ programme: 'voluntary' }) })
  const mandatory = animal(2, { arrivedMs: morning + minutes(10) })
  const old = animal(3, {
    arrivedMs: morning + minutes(20),
    facts: factsOf({ programme: 'voluntary', harvested: date('2026-11-12') }),
  })

  test('spoiling tissue first, then what is mandatory, then first come', () => {
    expect(called([voluntary, mandatory, old])).toEqual([
      old.animal,
      mandatory.animal,
      voluntary.animal,
    ])
  })

  test('first come first, where the station does not put mandatory sampling first', () => {
    const settings = { ...usualLineSettings, mandatoryFirst: false }
    expect(called([voluntary, mandatory], view({ settings }))).toEqual([
      voluntary.animal,
      mandatory.animal,
    ])
  })

  test('a warm day spoils sooner: the same head is not in a hurry in the cold', () => {
    const yesterday = animal(4, {
      arrivedMs: morning + minutes(30),
      facts: factsOf({ harvested: date('2026-11-13'), harvestedAt: '12:00' }),
    })
    const at = (celsius: number) =>
      called([mandatory, yesterday], view({ air: airAt(morning, zone, celsius) }))
    expect(at(2)).toEqual([mandatory.animal, yesterday.animal])
    expect(at(22)).toEqual([yesterday.animal, mandatory.animal])
  })

  test('a frozen head keeps, and of a spoiled one nothing is left to save', () => {
    for (const fault of ['frozen', 'spoiled'] as const) {
      const head = { presented: 'head-only' as const, faults: [fault] }
      const kept = { ...old, facts: { ...old.facts, head } }
      expect(called([mandatory, kept])).toEqual([mandatory.animal, kept.animal])
    }
  })

  test('one that was overtaken as often as is allowed goes before all that came later', () => {
    const taken = Array.from({ length: usualLineSettings.overtakenAtMost }, (_, at) => ({
      arrivedMs: morning + minutes(at + 1),
      assignedMs: morning + minutes(at + 2),
      sampler: person('sampler', 2),
    }))
    expect(called([voluntary, mandatory], view({ taken }))).toEqual([
      voluntary.animal,
      mandatory.animal,
    ])
    expect(called([voluntary, mandatory], view({ taken: taken.slice(1) }))[0]).toBe(
      mandatory.animal,
    )
  })
})

test('nobody is overtaken more often than is allowed by animals their sampler could have left', () => {
  const comer = fc.record({
    rank: fc.constantFrom<Rank>(0, 1, 2),
    needs: fc.constantFrom(1, 2, 5, 6),
    /** Who is free after this one came: their skills. */
    free: fc.array(fc.constantFrom(1, 3, everySkill), { maxLength: 3 }),
  })
  fc.assert(
    fc.property(
      fc.array(comer, { maxLength: 40 }),
      fc.integer({ min: 0, max: 4 }),
      (comers, most) => {
        const turns = new Turns(comers.length, most)
        const waiting = new Set<number>()
        const overtaken = comers.map(() => 0)
        const take = (skills: number) => {
          const taken = turns.take(skills)
          if (taken < 0) {
            for (const at of waiting) expect(suffices(skills, comers[at]?.needs ?? 0)).toBe(false)
            return
          }
          waiting.delete(taken)
          for (const at of waiting)
            if (at < taken && suffices(skills, comers[at]?.needs ?? 0))
              overtaken[at] = (overtaken[at] ?? 0) + 1
        }
        comers.forEach(({ rank, needs, free }, at) => {
          turns.join(at, rank, needs, 0)
          waiting.add(at)
          free.forEach(take)
        })
        while (waiting.size > 0) take(everySkill)
        for (const times of overtaken) expect(times).toBeLessThanOrEqual(most)
      },
    ),
    { numRuns: 500, seed: 9 },
  )
})
