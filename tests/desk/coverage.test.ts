/** Coverage at the desk: a practice season counted once by the desk, and once more here by hand. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { rebuildReadTables } from '../../db/log/rebuild.ts'
import type { AnimalFacts, Species } from '../../shared-types/animal.ts'
import { CoveragePlan } from '../../shared-types/coverage.ts'
import type { ResultWord } from '../../shared-types/laboratory-result.ts'
import type { AnimalNumber, BagNumber } from '../../shared-types/sample-number.ts'
import type { TissueCheck } from '../../shared-types/tissue.ts'
import { FigureName } from '../../shared-types/views/coverage.ts'
import { folderForAll } from '../merge/histories.ts'
import { checkIn, openStation, sampleBoth, type TestDesk } from '../support/desk.ts'
import { factsIn, playSeason, reportAll, type Season } from '../support/season.ts'

const folder = folderForAll()

const plan = CoveragePlan.parse({
  design: { prevalence: 0.05, sensitivity: 0.95, confidence: 0.9 },
  ages: ['yearling', 'adult'],
  weights: [],
  numbers: [
    { unit: 'P1', species: 'mule-deer', population: 400, harvested: 90, goal: null },
    { unit: 'P4', species: 'elk', population: null, harvested: null, goal: 25 },
    { unit: 'Z9', species: 'moose', population: 50, harvested: null, goal: null },
  ],
})

/** Counts by a plain walk over the entries: no table, no SQL, none of the desk's rules. */
function countByHand(season: Season) {
  const animals = new Map<AnimalNumber, AnimalFacts>()
  const seen = new Map<string, TissueCheck>()
  const bags = new Map<BagNumber, { animal: AnimalNumber; seen: TissueCheck | undefined }>()
  const words = new Map<AnimalNumber, { part: string; word: ResultWord }[]>()
  for (const { kind, body } of factsIn(season.log)) {
    if (kind === 'animal.checked-in' || kind === 'animal.amended')
      animals.set(body.animal, body.facts)
    if (kind === 'animal.struck-out') animals.delete(body.animal)
    if (kind === 'tissue.checked') seen.set(body.animal + body.site, body.check)
    if (kind === 'bag.sealed')
      bags.set(body.bag, { animal: body.animal, seen: seen.get(body.animal + body.site) })
    if (kind === 'bag.discarded') bags.delete(body.bag)
    if (kind === 'result.reported')
      words.set(body.animal, [
        ...(words.get(body.animal) ?? []),
        { part: body.bag, word: body.word },
      ])
  }
  return { animals, bags, words }
}

function resultByHand(words: readonly { part: string; word: ResultWord }[] = []) {
  const has = (word: ResultWord) => words.some((each) => each.word === word)
  if (has('detected')) return 'detected'
  if (has('presumptive')) return 'presumptive'
  if (has('pending')) return 'pending'
  // The practice stations take the two nodes only.
  if (has('not-detected')) return 'not-detected'
  return words.length === 0 ? null : 'unsuitable'
}

function herdByHand(season: Season, unit: string, species: Species) {
  const { animals, bags, words } = countByHand(season)
  const ours = [...animals].filter(
    ([, { place, species: of, age }]) =>
      place.by !== 'not-known' && place.unit === unit && of === species && age !== 'young',
  )
  const bagsOf = (animal: AnimalNumber) => [...bags.values()].filter((bag) => bag.animal === animal)
  const results = ours.map(([animal]) => resultByHand(words.get(animal)))
  const tested = (word: ReturnType<typeof resultByHand>) =>
    word === 'detected' || word === 'presumptive' || word === 'not-detected'
  return {
    checked: ours.length,
    sampled: ours.filter(([animal]) => bagsOf(animal).length > 0).length,
    usable: ours.filter(
      ([animal], at) =>
        tested(results[at] ?? null) ||
        (results[at] !== 'unsuitable' &&
          bagsOf(animal).some((bag) => bag.seen === 'lymph-node' || bag.seen === 'obex')),
    ).length,
    tested: results.filter(tested).length,
    presumptive: results.filter((word) => word === 'presumptive').length,
    detected: results.filter((word) => word === 'detected').length,
  }
}

describe('a merged season at the office', () => {
  let season: Season
  beforeAll(async () => {
    season = await playSeason(folder, { desks: 3, animals: 150 })
  }, 180_000)
  afterAll(() => {
    season.log.close()
    return season.desk.end()
  })

  async function agrees() {
    const { units } = await season.desk.ask('coverage', {})
    expect(units.length).toBeGreaterThan(5)
    for (const { unit, species, counts } of units)
      expect({ unit, species, ...counts }).toEqual({
        unit,
        species,
        ...herdByHand(season, unit, species),
      })
    return units
  }

  test('before the office has set a design, animals are counted and nothing is claimed', async () => {
    const { units, plan: none } = await season.desk.ask('coverage', {})
    expect(none).toBeNull()
    for (const { proof, state } of units) expect([proof, state]).toEqual([null, 'no-plan'])
  })

  test('with a design and no result yet, the counts are those of an independent count', async () => {
    await season.desk.ask('coverage.plan', { plan })
    const units = await agrees()
    expect(units.map(({ counts }) => counts.tested).every((tested) => tested === 0)).toBe(true)
    expect(units.find(({ unit }) => unit === 'Z9')).toMatchObject({
      state: 'nothing-tested',
      warnings: [expect.stringContaining("no station's list")],
    })
  })

  test('with the results in, every stage is that of an independent count', async () => {
    reportAll(season)
    const units = await agrees()
    const all = units.map(({ counts }) => counts)
    const sum = (of: 'tested' | 'detected' | 'presumptive') =>
      all.reduce((total, counts) => total + counts[of], 0)
    expect(sum('tested')).toBeGreaterThan(50)
    expect(sum('detected')).toBeGreaterThan(0)
    expect(sum('presumptive')).toBeGreaterThan(0)
  })

  test('a rebuild from the entries gives the same coverage', async () => {
    const before = await season.desk.ask('coverage', {})
    const rebuilt = rebuildReadTables(season.log)
    expect(rebuilt.ok).toBe(true)
    expect(await season.desk.ask('coverage', {})).toEqual(before)
  })

  test('each figure opens to its formula, the numbers put in and its source', async () => {
    const { units } = await season.desk.ask('coverage', {})
    const detectedIn = units.find(({ counts }) => counts.detected > 0)
    const clearIn = units.find(({ atMost }) => atMost !== null)
    for (const figure of FigureName.options) {
      const of =
        figure === 'at-most'
          ? clearIn
          : figure === 'harvested'
            ? units.find(({ harvested }) => harvested !== null)
            : detectedIn
      if (of === undefined) throw new Error(`no unit shows ${figure}`)
      const asked = { unit: of.unit, species: of.species, figure }
      if (figure === 'points') {
        expect(await season.desk.code('coverage.figure', asked)).toBe('no-such-figure')
        continue
      }
      const { formula, source, value, caution } = await season.desk.ask('coverage.figure', asked)
      for (const words of [formula, source, value, caution]) expect(words).not.toBe('')
    }
  })

  test('pictures over time: every day of the stations, and how long results took', async () => {
    const { days, turnaround, medianDays, waiting } = await season.desk.ask('coverage.times', {})
    const { animals, bags } = countByHand(season)
    expect(days.reduce((sum, { checked }) => sum + checked, 0)).toBe(animals.size)
    expect(days.find(({ date }) => date === '2026-11-24')?.tested).toBeGreaterThan(0)
    expect(medianDays).toBeGreaterThanOrEqual(11)
    expect(turnaround.reduce((sum, { samples }) => sum + samples, 0) + waiting).toBeLessThanOrEqual(
      bags.size,
    )
  })

  test('the table for a spreadsheet has no formula in it', async () => {
    await season.desk.ask('coverage.plan', {
      plan: {
        ...plan,
        numbers: [
          { unit: '=1+1', species: 'elk', population: 9, harvested: null, goal: null },
          ...plan.numbers,
        ],
      },
    })
    const { name, text } = await season.desk.ask('coverage.csv', { by: 'herd' })
    expect(name).toMatch(/^practice-coverage-.*\.csv$/)
    expect(text).toContain("'=1+1")
    expect(text).not.toMatch(/(^|,)"?=1/m)
    const classes = await season.desk.ask('coverage.csv', { by: 'class' })
    const { units } = await season.desk.ask('coverage', {})
    const rows = units.reduce((sum, each) => sum + each.classes.length, 0)
    expect(classes.text.trimEnd().split('\n')).toHaveLength(rows + 1)
  })

  test('outlines that the office supplies are entries; a unit drawn anew replaces only itself', async () => {
    const square = (code: string, west: number) => ({
      type: 'Feature',
      properties: { code, area: 12 },
      geometry: {
        type: 'Polygon',
        coordinates: [
          [
            [west, 45],
            [west, 46],
            [west + 1, 46],
            [west + 1, 45],
            [west, 45],
          ],
        ],
      },
    })
    const text = JSON.stringify({
      type: 'FeatureCollection',
      features: [square('P1', -141), square('P4', -140)],
    })
    const brought = await bring(season.desk, text)
    const { properties } = await season.desk.ask('outlines.look', { brought })
    expect(properties[0]).toMatchObject({ name: 'code', fits: 2 })
    expect(await season.desk.ask('outlines.supply', { brought, property: 'code' })).toEqual({
      outlines: 2,
    })
    const anew = await bring(season.desk, JSON.stringify(square('P4', -139)))
    await season.desk.ask('outlines.supply', { brought: anew, property: 'code' })
    const { outlines } = await season.desk.ask('coverage', {})
    expect(outlines.map(({ unit }) => unit)).toEqual(['P1', 'P4'])
    expect(outlines[1]?.polygons[0]?.[0]?.[0]).toEqual([-139, 45])
    expect(await season.desk.code('outlines.supply', { brought, property: 'nope' })).toBe(
      'no-unit-codes',
    )
  })
})

/** A file brought to the desk, as the screen does it. */
async function bring(desk: TestDesk, text: string): Promise<string> {
  const base64 = Buffer.from(text).toString('base64')
  const piece = { brought: null, name: 'units.geojson', base64 }
  return (await desk.ask('results.bring', piece)).brought
}

describe('what an office may get wrong', () => {
  let desk: TestDesk
  beforeAll(async () => {
    desk = (await openStation()).desk
  })
  afterAll(() => desk.end())

  test.each([
    ['{"type":"FeatureCollection","features":[{"type":"Fea', 'outlines-torn'],
    ['{"units":[]}', 'not-geojson'],
    [
      '{"type":"Feature","properties":{},"geometry":{"type":"Point","coordinates":[1,2]}}',
      'no-outlines',
    ],
  ])('outlines in %s are refused, and nothing is written', async (text, refusal) => {
    const brought = await bring(desk, text)
    expect(await desk.code('outlines.look', { brought })).toBe(refusal)
    expect(await desk.code('outlines.supply', { brought, property: 'code' })).toBe(refusal)
  })

  test('a table without headings says which it needs', async () => {
    expect(await desk.code('coverage.readNumbers', { text: '12,elk,40' })).toBe('no-headings')
    expect(await desk.code('coverage.readNumbers', { text: '"torn' })).toBe('no-headings')
  })

  test('semicolons, a mark of UTF-8 and headings in capitals are read', async () => {
    const text = '\uFEFFUnit;Species;Population\r\n12;elk;1.200\r\n'
    expect(await desk.ask('coverage.readNumbers', { text })).toEqual({
      numbers: [{ unit: '12', species: 'elk', population: 1200, harvested: null, goal: null }],
      problems: [],
    })
  })

  test.each([0, 1, -0.01, Number.NaN])('a design prevalence of %d is none', async (prevalence) => {
    const design = { ...plan.design, prevalence }
    const { field } = await desk.refusal('coverage.plan', { plan: { ...plan, design } })
    expect(field).toBe('plan.design.prevalence')
  })

  test('a figure of a unit that has none is refused', async () => {
    const asked = { unit: '99', species: 'elk', figure: 'tested' } as const
    expect(await desk.code('coverage.figure', asked)).toBe('no-such-figure')
  })
})

describe('during the weekend', () => {
  let desk: TestDesk
  let sampler: Parameters<typeof sampleBoth>[2]
  beforeAll(async () => {
    const opened = await openStation()
    desk = opened.desk
    sampler = opened.crew.sampler
  })
  afterAll(() => desk.end())

  const need = (unit: string, species: Species | null = null) =>
    desk.ask('coverage.need', { unit, species })

  test('a station without a design is not steered', async () => {
    expect(await need('12')).toEqual({ say: null })
  })

  test('what is short is said in animals of the ages that count, and falls with each sample', async () => {
    const facts = {
      species: 'mule-deer',
      age: 'adult',
      place: { by: 'unit', unit: '12', place: 'mill' },
    } as const
    await desk.ask('coverage.plan', {
      plan: {
        design: { prevalence: 0.01, sensitivity: 1, confidence: 0.95 },
        ages: ['adult'],
        weights: [],
        numbers: [{ unit: '12', species: 'mule-deer', population: null, harvested: null, goal: 2 }],
      },
    })
    expect((await need('12')).say).toBe('This unit needs 2 more adults (mule deer).')
    expect((await need('12', 'elk')).say).toBeNull()
    await sampleBoth(desk, await checkIn(desk, facts), sampler)
    expect((await need('12')).say).toBe('This unit needs 1 more adult (mule deer).')
    await sampleBoth(desk, await checkIn(desk, { ...facts, age: 'yearling', tag: 'T-2' }), sampler)
    expect((await need('12')).say).toBe('This unit needs 1 more adult (mule deer).')
    await sampleBoth(desk, await checkIn(desk, { ...facts, tag: 'T-3' }), sampler)
    expect((await need('12')).say).toBeNull()
  })

  test('who may not set the design is told who may', async () => {
    const { people } = await desk.ask('people', {})
    const volunteer = people.find(({ role }) => role === 'volunteer')
    await desk.sit(volunteer?.person as never)
    expect(await desk.code('coverage.plan', { plan })).toBe('role-may-not')
  })
})
