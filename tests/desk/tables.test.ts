import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { z } from 'zod'
import {
  checkIn,
  type Crew,
  openCooler,
  openStation,
  sampleBoth,
  type TestDesk,
} from '../support/desk.ts'

let desk: TestDesk
let crew: Crew
beforeAll(async () => {
  ;({ desk, crew } = await openStation())
  const cooler = await openCooler(desk)
  const { bags } = await sampleBoth(desk, await checkIn(desk), crew.sampler)
  for (const bag of bags) await desk.ask('bag.place', { bag, cooler })
  await desk.ask('cooler.read', { cooler, celsius: -2.5 })
  await checkIn(desk, {
    hunter: '=cmd()',
    place: { by: 'coordinates', latitude: 44.2, longitude: -109.75, unit: '12' },
  })
})
afterAll(() => desk.end())

type What = 'animals' | 'samples' | 'kits' | 'coolers' | 'entries'
const rows = async (what: What, hunters = false) =>
  z
    .array(z.record(z.string(), z.unknown()))
    .parse(JSON.parse((await desk.ask('table', { what, format: 'json', hunters })).text))
const csv = async (what: What, hunters = false) =>
  (await desk.ask('table', { what, format: 'csv', hunters })).text

describe('a list for elsewhere', () => {
  test.each(['animals', 'samples', 'kits', 'coolers', 'entries'] as const)(
    'of %s has the same rows as CSV and as JSON, under the same heads',
    async (what) => {
      const table = await rows(what)
      const text = await csv(what)
      expect(table.length).toBeGreaterThan(0)
      expect(text.split('\n')[0]).toBe(Object.keys(table[0] ?? {}).join(','))
      if (what !== 'entries') expect(text.trim().split('\n')).toHaveLength(table.length + 1)
    },
  )

  test('gives times in the station’s own time, with its offset', async () => {
    const [animal] = await rows('animals')
    expect(animal?.arrived_at).toMatch(/^2026-11-14T\d\d:\d\d:\d\d-07:00$/)
    const [sample] = await rows('samples')
    expect(Date.parse(String(sample?.sealed_at))).toBeGreaterThan(0)
  })

  test('keeps numbers below nothing as numbers, also in CSV', async () => {
    const text = await csv('animals')
    expect(text).toContain(',44.2,-109.75,')
    expect(await csv('coolers')).toContain(',-2.5,')
  })

  test('lets no spreadsheet run a name as a formula', async () => {
    expect(await csv('animals', true)).toContain(",'=cmd(),")
    expect((await rows('animals', true)).map(({ hunter }) => hunter)).toContain('=cmd()')
  })

  test('has the numbers of hunters and their tags only where they are asked for', async () => {
    for (const what of ['animals', 'entries'] as const) {
      expect(await csv(what)).not.toMatch(/=cmd|T2\d{4}/)
      expect(await csv(what, true)).toMatch(/T2\d{4}/)
    }
  })

  test('of entries holds the whole chain, each entry joined to the one before', async () => {
    const entries = await rows('entries')
    expect(entries.map(({ seq }) => seq)).toEqual(entries.map((_, at) => at + 1))
    for (const [at, { prev }] of entries.entries())
      expect(prev).toBe(at === 0 ? '0'.repeat(64) : entries[at - 1]?.hash)
  })

  test('is named after what it holds and the desk it comes from', async () => {
    expect((await desk.ask('table', { what: 'kits', format: 'csv' })).name).toBe('kits-26KRVA.csv')
  })
})
