/** What the counts of a unit prove, and what the screen may and may not say of them. */
import { describe, expect, test } from 'vitest'
import { coverageOf, type ClassedAnimals } from '../../electron/station/coverage/coverage.ts'
import { figureOf, probabilityText } from '../../electron/station/coverage/figures.ts'
import { unitNeed } from '../../electron/station/coverage/need-words.ts'
import { readNumbers } from '../../electron/station/coverage/numbers-file.ts'
import { coverageTable } from '../../electron/station/coverage/table.ts'
import { daysOfSampling, medianOfBands } from '../../electron/station/coverage/times.ts'
import { CoveragePlan } from '../../shared-types/coverage.ts'
import type { ResultWord } from '../../shared-types/laboratory-result.ts'
import { LocalDate } from '../../shared-types/local-date.ts'

const units = [
  { code: '12', name: 'Juniper Bench', mandatory: true },
  { code: '2', name: 'Cinder Flats', mandatory: false },
]

function plan(changed: Partial<CoveragePlan> = {}): CoveragePlan {
  return CoveragePlan.parse({
    design: { prevalence: 0.01, sensitivity: 1, confidence: 0.95 },
    ages: ['adult', 'yearling'],
    weights: [],
    numbers: [],
    ...changed,
  })
}

const adults = (
  animals: number,
  word: ResultWord | null,
  changed: Partial<ClassedAnimals> = {},
): ClassedAnimals => ({
  unit: '12',
  species: 'mule-deer',
  sex: 'male',
  age: 'adult',
  tissue: 'right',
  results: word === null ? [] : [{ site: 'left', word }],
  animals,
  ...changed,
})

function herd(animals: readonly ClassedAnimals[], of: CoveragePlan | null = plan()) {
  const [only] = coverageOf({ animals, plan: of, obex: 'not-enough', units })
  if (!only) throw new Error('no herd')
  return only
}

describe('an animal counts once in each stage that it has reached', () => {
  test.each([
    ['not sampled', { tissue: 'none' }, null, [1, 0, 0, 0, 0]],
    ['salivary gland bagged', { tissue: 'wrong' }, null, [1, 1, 0, 0, 0]],
    ['a node in a bag', {}, null, [1, 1, 1, 0, 0]],
    ['pending', {}, 'pending', [1, 1, 1, 0, 0]],
    ['unsuitable, by the laboratory', {}, 'unsuitable', [1, 1, 0, 0, 0]],
    ['not detected', {}, 'not-detected', [1, 1, 1, 1, 0]],
    ['presumptive', {}, 'presumptive', [1, 1, 1, 1, 0]],
    ['detected', {}, 'detected', [1, 1, 1, 1, 1]],
  ] as const)('%s', (_, tissue, word, [checked, sampled, usable, tested, detected]) => {
    expect(herd([adults(1, word, tissue)]).counts).toMatchObject({
      checked,
      sampled,
      usable,
      tested,
      detected,
    })
  })

  test('an age that does not count is shown beside the others and counts nothing', () => {
    const { counts, classes, warnings } = herd([
      adults(10, 'not-detected'),
      adults(4, 'not-detected', { age: 'young' }),
    ])
    expect(counts.tested).toBe(10)
    expect(classes.map(({ age, tested, counts: does }) => [age, tested, does])).toEqual([
      ['adult', 10, true],
      ['young', 4, false],
    ])
    expect(warnings).toEqual(['4 sampled of an age that does not count (young of the year).'])
  })
})

describe('how a unit stands', () => {
  test.each([
    ['reached', [adults(299, 'not-detected')]],
    ['short', [adults(298, 'not-detected')]],
    ['waiting-for-results', [adults(200, 'not-detected'), adults(99, null)]],
    ['nothing-tested', [adults(7, null, { tissue: 'none' })]],
    ['detected', [adults(298, 'not-detected'), adults(1, 'detected')]],
  ] as const)('%s', (state, animals) => {
    expect(herd(animals).state).toBe(state)
  })

  test('without a design nothing is claimed but a detection', () => {
    expect(herd([adults(5, 'not-detected')], null)).toMatchObject({ state: 'no-plan', proof: null })
    expect(herd([adults(1, 'detected')], null).state).toBe('detected')
  })

  test('95% and 99% are told beside what the programme wants', () => {
    const { proof } = herd(
      [adults(100, 'not-detected')],
      plan({ design: { prevalence: 0.01, sensitivity: 1, confidence: 0.9 } }),
    )
    expect(proof?.needed).toEqual([
      { confidence: 0.9, total: 230, more: 130 },
      { confidence: 0.95, total: 299, more: 199 },
      { confidence: 0.99, total: 459, more: 359 },
    ])
  })

  test('a small herd and a test that misses some: not even the whole herd is enough', () => {
    const numbers = [
      { unit: '12', species: 'mule-deer', population: 20, harvested: null, goal: null } as const,
    ]
    const of = plan({
      design: { prevalence: 0.01, sensitivity: 0.9, confidence: 0.95 },
      numbers: [...numbers],
    })
    const { proof, state } = herd([adults(20, 'not-detected')], of)
    expect(proof?.needed[0]).toEqual({ confidence: 0.95, total: null, more: null })
    expect(proof?.moreToSample).toBeNull()
    expect(proof?.detection).toBeCloseTo(0.9, 12)
    expect(state).toBe('short')
  })

  test('a herd said to be smaller than its samples counts as without end, and it is said', () => {
    const numbers = [
      { unit: '12', species: 'mule-deer', population: 40, harvested: 3, goal: null } as const,
    ]
    const { proof, warnings } = herd([adults(50, 'not-detected')], plan({ numbers: [...numbers] }))
    expect(proof?.method).toBe('binomial')
    expect(warnings[0]).toContain('The estimate of 40 animals is less than the 50 sampled here')
    expect(warnings[1]).toBe('The office counts 3 harvested, yet 50 were checked in.')
  })
})

test('after a detection the share comes with both intervals, and no claim of "at most"', () => {
  // 15 of 148: Newcombe 1998 (from memory)
  const { prevalence, atMost } = herd([adults(133, 'not-detected'), adults(15, 'detected')])
  expect(prevalence?.share).toBeCloseTo(15 / 148, 12)
  expect(prevalence?.exact.low).toBeCloseTo(0.0578, 4)
  expect(prevalence?.wilson.high).toBeCloseTo(0.1605, 4)
  expect(atMost).toBeNull()
})

test('299 clear: at most 1 in 100 by the one-sided bound', () => {
  expect(herd([adults(299, 'not-detected')]).atMost).toBeCloseTo(0.009969, 6)
})

test('weights are the office’s: points, and a class without one earns none', () => {
  const weights = [
    { species: 'mule-deer', sex: 'male', age: 'adult', weight: 3 } as const,
    { species: 'mule-deer', sex: 'female', age: 'adult', weight: 1 } as const,
  ]
  const { proof, warnings } = herd(
    [
      adults(50, 'not-detected'),
      adults(40, 'not-detected', { sex: 'female' }),
      adults(5, 'not-detected', { age: 'yearling' }),
    ],
    plan({ weights: [...weights] }),
  )
  expect(proof?.weighted?.points).toBe(190)
  expect(proof?.weighted?.detection).toBeCloseTo(1 - 0.97 ** 50 * 0.99 ** 40, 12)
  expect(warnings).toContain('5 tested of a class that has no weight: they earn no points.')
})

test('a species that the office does not weight is judged without weights', () => {
  const weights = [{ species: 'elk', sex: 'male', age: 'adult', weight: 3 } as const]
  const { proof, warnings } = herd([adults(50, 'not-detected')], plan({ weights: [...weights] }))
  expect(proof?.weighted).toBeNull()
  expect(warnings).toEqual([])
})

test('units stand in the order a person reads them, and one in no list is pointed out', () => {
  const herds = coverageOf({
    animals: [adults(1, null), adults(1, null, { unit: '2' }), adults(1, null, { unit: '1Z' })],
    plan: null,
    obex: 'not-enough',
    units,
  })
  expect(herds.map(({ unit }) => unit)).toEqual(['1Z', '2', '12'])
  expect(herds[0]?.warnings[0]).toContain("Unit 1Z is in no station's list")
})

describe('what is said', () => {
  test('the need of a unit, in the ages that count', () => {
    const of = plan({ ages: ['adult'] })
    expect(unitNeed([herd([adults(285, null)], of)], of)).toBe(
      'This unit needs 14 more adults (mule deer).',
    )
    expect(unitNeed([herd([adults(299, null)], of)], of)).toBeNull()
    const any = plan({ ages: ['adult', 'yearling', 'young'] })
    expect(unitNeed([herd([adults(298, null)], any)], any)).toBe(
      'This unit needs 1 more animal (mule deer).',
    )
  })

  test('a chance under certainty is never written as 100%', () => {
    expect(probabilityText(0.99996)).toBe('over 99.9%')
    expect(probabilityText(1)).toBe('100.0%')
  })

  test('a figure names the numbers it was made of', () => {
    const of = plan({
      numbers: [
        { unit: '12', species: 'mule-deer', population: 1000, harvested: null, goal: null },
      ],
    })
    const figure = figureOf('detection', { of: herd([adults(258, 'not-detected')], of), plan: of })
    expect(figure?.value).toBe('95.0%')
    expect(figure?.put.map(({ sign, is }) => `${sign} ${is}`)).toEqual([
      'n 258',
      'p 1.00%',
      's 1',
      'N 1000',
      'D 10',
    ])
    expect(figure?.source).toContain('Cannon & Roe')
  })

  test('the table holds shares as numbers', () => {
    const [row] = coverageTable([herd([adults(299, 'not-detected')])])
    expect(row).toMatchObject({
      unit: '12',
      state: 'target reached',
      tested: 299,
      'still_to_test_99%': 160,
      share_detected: null,
    })
  })
})

test('the office’s table of numbers: grouped thousands, words for species, and what is no number', () => {
  const { numbers, problems } = readNumbers([
    { unit: '12', species: 'Mule deer', population: '1,200', harvested: '', goal: '30' },
    { unit: '2', species: 'elk', population: '4 500', harvested: '12' },
    { unit: '2', species: 'elk', population: '7' },
    { unit: '3', species: 'goat', population: '7' },
    { unit: '4', species: 'elk', population: 'many' },
    { unit: '', species: 'elk', population: '9' },
    { unit: '5', species: 'elk', population: '1.2E+3' },
  ])
  expect(numbers).toEqual([
    { unit: '12', species: 'mule-deer', population: 1200, harvested: null, goal: 30 },
    { unit: '2', species: 'elk', population: 4500, harvested: 12, goal: null },
  ])
  expect(problems.map((problem) => problem.slice(0, 5))).toEqual([
    'Row 4',
    'Row 5',
    'Row 6',
    'Row 7',
    'Row 8',
  ])
})

test('days of stations and laboratories are one line of days', () => {
  const day = (text: string) => LocalDate.parse(text)
  expect(
    daysOfSampling(
      [{ day: day('2026-11-15'), checked: 9, sampled: 8 }],
      [
        { day: day('2026-11-14'), animals: 3 },
        { day: day('2026-11-15'), animals: 2 },
      ],
    ),
  ).toEqual([
    { date: '2026-11-14', checked: 0, sampled: 0, tested: 3 },
    { date: '2026-11-15', checked: 9, sampled: 8, tested: 2 },
  ])
  expect(medianOfBands([])).toBeNull()
  expect(
    medianOfBands([
      { days: 3, samples: 5 },
      { days: 9, samples: 5 },
    ]),
  ).toBe(3)
  expect(
    medianOfBands([
      { days: 3, samples: 4 },
      { days: 9, samples: 5 },
    ]),
  ).toBe(9)
})

test.each([
  ['a prevalence of nothing', { prevalence: 0, sensitivity: 1, confidence: 0.95 }],
  ['a prevalence of everything', { prevalence: 1, sensitivity: 1, confidence: 0.95 }],
  ['a test that never shows', { prevalence: 0.01, sensitivity: 0, confidence: 0.95 }],
  ['certainty', { prevalence: 0.01, sensitivity: 1, confidence: 1 }],
])('%s is no design', (_, design) => {
  expect(
    CoveragePlan.safeParse({ design, ages: ['adult'], weights: [], numbers: [] }).success,
  ).toBe(false)
})
