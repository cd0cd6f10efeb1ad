/** The pure pieces of the coverage screen: where outlines lie in a picture, and a plan as it is typed. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { planMap } from '../../../renderer/coverage/map-plan.ts'
import { planDraft, readPlan, withNumbers } from '../../../renderer/coverage/plan-draft.ts'
import { chanceText } from '../../../renderer/coverage/words.ts'
import { CoveragePlan } from '../../../shared-types/coverage.ts'
import type { CoverageView } from '../../../shared-types/views/coverage.ts'

type Corner = [number, number]
const box = (west: number, south: number, wide: number, high: number): Corner[] => [
  [west, south],
  [west + wide, south],
  [west + wide, south + high],
  [west, south + high],
  [west, south],
]

describe('the map', () => {
  test('needs outlines', () => {
    expect(planMap([], 960, 520)).toBeNull()
  })

  test('at 60 degrees north a degree of longitude is drawn half as long as one of latitude', () => {
    const plan = planMap([{ unit: 'A', polygons: [[box(-140, 59.5, 1, 1)]] }], 960, 520)
    const corners = [...(plan?.units[0]?.path ?? '').matchAll(/(-?[\d.]+),(-?[\d.]+)/g)].map(
      ([, x, y]) => [Number(x), Number(y)] as const,
    )
    const wide = Math.max(...corners.map(([x]) => x)) - Math.min(...corners.map(([x]) => x))
    const high = Math.max(...corners.map(([, y]) => y)) - Math.min(...corners.map(([, y]) => y))
    expect(wide / high).toBeCloseTo(0.5, 2)
  })

  test('north is up and east is right', () => {
    const plan = planMap(
      [
        { unit: 'south-west', polygons: [[box(-141, 45, 0.5, 0.5)]] },
        { unit: 'north-east', polygons: [[box(-140, 46, 0.5, 0.5)]] },
      ],
      960,
      520,
    )
    const [first, second] = plan?.units ?? []
    expect(second?.label.x).toBeGreaterThan(first?.label.x ?? NaN)
    expect(second?.label.y).toBeLessThan(first?.label.y ?? NaN)
  })

  test('whatever the outlines, every corner lies in the picture', () => {
    const degrees = (most: number) => fc.double({ min: -most, max: most, noNaN: true })
    const ring = fc.array(fc.tuple(degrees(180), degrees(90)), { minLength: 4, maxLength: 8 })
    fc.assert(
      fc.property(fc.array(ring, { minLength: 1, maxLength: 4 }), (rings) => {
        const outlines = rings.map((each, at) => ({ unit: String(at), polygons: [[each]] }))
        const plan = planMap(outlines, 960, 520)
        for (const { path } of plan?.units ?? [])
          for (const [, x, y] of path.matchAll(/(-?[\d.e-]+),(-?[\d.e-]+)/g)) {
            expect(Number(x)).toBeGreaterThanOrEqual(-0.1)
            expect(Number(x)).toBeLessThanOrEqual(960.1)
            expect(Number(y)).toBeGreaterThanOrEqual(-0.1)
            expect(Number(y)).toBeLessThanOrEqual((plan?.height ?? 0) + 0.1)
          }
      }),
    )
  })
})

const viewOf = (plan: CoveragePlan | null) => ({ plan, units: [] }) as unknown as CoverageView

describe('a plan as it is typed', () => {
  const plan = CoveragePlan.parse({
    design: { prevalence: 0.0025, sensitivity: 0.983, confidence: 0.95 },
    ages: ['adult'],
    weights: [{ species: 'elk', sex: 'male', age: 'adult', weight: 2.5 }],
    numbers: [{ unit: '12', species: 'elk', population: 900, harvested: null, goal: 30 }],
  })

  test('reads back as what was set', () => {
    expect(readPlan(planDraft(viewOf(plan)))).toEqual({ ok: true, plan })
  })

  test('takes a decimal comma, and leaves herds out of which nothing is known', () => {
    const draft = planDraft(viewOf(plan))
    const empty = { unit: '9', species: 'elk', population: '', harvested: ' ', goal: '' } as const
    const read = readPlan({ ...draft, prevalence: '0,25', numbers: [...draft.numbers, empty] })
    expect(read).toEqual({ ok: true, plan })
  })

  test.each([
    ['prevalence', { prevalence: '0' }],
    ['prevalence', { prevalence: '100' }],
    ['prevalence', { prevalence: 'one' }],
    ['sensitivity', { sensitivity: '' }],
    ['confidence', { confidence: '100' }],
    ['ages', { ages: [] }],
  ])('says at %s that %o is none', (field, changed) => {
    const read = readPlan({ ...planDraft(viewOf(plan)), ...changed })
    expect(read.ok ? [] : Object.keys(read.errors)).toEqual([field])
  })

  test('says at the very herd that a number is none', () => {
    const draft = planDraft(viewOf(plan))
    const row = { unit: '9', species: 'elk', population: '1.5', harvested: '', goal: '' } as const
    const read = readPlan({ ...draft, numbers: [...draft.numbers, row] })
    expect(read.ok ? [] : Object.keys(read.errors)).toEqual(['9 elk population'])
  })

  test('a table taken in leaves what it does not know as it was typed', () => {
    const draft = withNumbers(planDraft(viewOf(plan)), [
      { unit: '12', species: 'elk', population: 950, harvested: 40, goal: null },
    ])
    expect(draft.numbers).toEqual([
      { unit: '12', species: 'elk', population: '950', harvested: '40', goal: '30' },
    ])
  })
})

test('a chance under certainty is never written as 100%', () => {
  expect(chanceText(0.9999)).toBe('over 99.9%')
  expect(chanceText(0.95)).toBe('95.0%')
})
