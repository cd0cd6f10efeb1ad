import fc from 'fast-check'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { type CallName, deskApi } from '../../shared-types/desk-api.ts'
import { Refusal } from '../../shared-types/result.ts'
import { DeskId, type Part, sampleNumber } from '../../shared-types/sample-number.ts'
import {
  type Crew,
  checkIn,
  factsOf,
  openStation,
  setUpInput,
  type TestDesk,
} from '../support/desk.ts'
import { imprintOf } from '../support/raw-log.ts'

let desk: TestDesk
let crew: Crew
let atLead: TestDesk['session']
beforeAll(async () => {
  ;({ desk, crew } = await openStation())
  atLead = desk.session
})
beforeEach(() => {
  desk.session = atLead
})
afterAll(() => desk.end())

describe('a call that is not of the contract', () => {
  test.each([
    'line.dance',
    '__proto__',
    'constructor',
    'toString',
    'hasOwnProperty',
    '',
    'LINE',
    'animal.checkIn\u0000',
  ])('is unknown: %j', async (name) => {
    expect((await desk.refusal(name, {})).code).toBe('unknown-call')
  })

  test('is told by its beginning only, however long it is', async () => {
    expect((await desk.refusal('x'.repeat(5000), {})).say.length).toBeLessThan(120)
  })
})

describe('input that does not fit is refused, naming the field', () => {
  const facts = factsOf()
  const wrong: [string, CallName, unknown, string | undefined][] = [
    ['an unknown field', 'animal.checkIn', { facts, contact: null, price: 3 }, undefined],
    [
      'an unknown field inside',
      'animal.checkIn',
      { facts: { ...facts, weight: 71 }, contact: null },
      'facts',
    ],
    [
      'a field set on the prototype',
      'line',
      JSON.parse('{"__proto__": {"admin": true}}'),
      undefined,
    ],
    ['a missing field', 'animal.checkIn', { facts }, 'contact'],
    ['nothing at all', 'animal.checkIn', undefined, undefined],
    ['null', 'animal.checkIn', null, undefined],
    ['a list', 'line', [], undefined],
    [
      'a species nobody hunts here',
      'animal.checkIn',
      { facts: { ...facts, species: 'unicorn' }, contact: null },
      'facts.species',
    ],
    [
      'a day that does not exist',
      'animal.checkIn',
      { facts: { ...facts, harvested: '2026-02-30' }, contact: null },
      'facts.harvested',
    ],
    ['a temperature no cooler has', 'cooler.read', { cooler: 'x', celsius: 400 }, 'celsius'],
    [
      'a temperature that is no number',
      'cooler.read',
      { cooler: 'x', celsius: Number.NaN },
      'celsius',
    ],
    ['half a bag', 'count.enter', { item: { of: 'animals' }, counted: 1.5 }, 'counted'],
    ['fewer than none', 'count.enter', { item: { of: 'animals' }, counted: -1 }, 'counted'],
    ['no reason', 'animal.leave', { animal: 'x', reason: '  ' }, 'reason'],
    [
      'a PIN of letters',
      'person.add',
      { name: 'Ann Ode', role: 'volunteer', training: [], pin: 'abcd' },
      'pin',
    ],
    [
      'an hour that no day has',
      'shift.plan',
      { person: 'x', date: '2026-11-14', from: '25:00', to: '26:00' },
      'from',
    ],
    ['a scan without end', 'number', { text: '9'.repeat(5000) }, 'text'],
    [
      'latitude beyond the pole',
      'animal.checkIn',
      {
        facts: { ...facts, place: { by: 'coordinates', latitude: 91, longitude: 0, unit: '' } },
        contact: null,
      },
      'facts.place.latitude',
    ],
  ]

  test.each(wrong)('%s', async (_, name, input, field) => {
    const refusal = await desk.refusal(name, input)
    expect(refusal.code).toBe('bad-input')
    expect(refusal.field).toBe(field)
    expect(refusal.next).toBe('Correct it and try again.')
  })
})

describe('a number that cannot be used', () => {
  const here = DeskId.parse('26KRVA')
  const fields: [CallName, string, Part, object][] = [
    ['animal.finish', 'animal', 'A', {}],
    ['animal.assign', 'sampler', 'P', {}],
    ['kit.open', 'kit', 'K', {}],
    ['bag.discard', 'bag', 'L', { reason: 'torn at the zip' }],
    ['cooler.read', 'cooler', 'C', { celsius: 4 }],
    ['handoff.callOff', 'handoff', 'M', { reason: 'courier broke down' }],
    ['label.void', 'number', 'L', { reason: 'torn', words: '' }],
    ['person.change', 'person', 'P', { name: 'Ann Ode', role: 'lead', training: [], active: true }],
  ]

  const inputs = async (field: string, text: string, rest: object) => {
    const animal = field === 'kit' || field === 'sampler' ? { animal: await checkIn(desk) } : {}
    return { ...animal, ...rest, [field]: text }
  }
  const misread = (text: string) => text.slice(0, 11) + (text.endsWith('7') ? '8' : '7')

  test.each(fields)(
    '%s: misread, of another station, of another thing, not in this log',
    async (name, field, part, rest) => {
      const ask = async (text: string) =>
        (await desk.refusal(name, await inputs(field, text, rest))).code
      expect(await ask(misread(sampleNumber(here, 42, part)))).toBe('check-character-wrong')
      expect(await ask(sampleNumber(DeskId.parse('26KRTA'), 1, part))).toBe('another-station')
      expect(await ask(sampleNumber(here, 42, part === 'A' ? 'C' : 'A'))).toBe('wrong-label')
      expect(await ask('tag 12-345')).toBe('not-a-sample-number')
      expect(await ask(sampleNumber(here, 9999, part))).toBe(
        name === 'label.void' ? 'label-never-printed' : 'not-in-this-log',
      )
    },
  )
})

test('whatever comes in, the desk answers: granted, or refused with nothing written', async () => {
  const names = (Object.keys(deskApi) as CallName[]).filter(
    (name) => !/^(shelf|practice|station|office)/.test(name),
  )
  const anything = fc.oneof(
    fc.jsonValue({ maxDepth: 2 }),
    fc.dictionary(
      fc.constantFrom('animal', 'kit', 'bag', 'facts', 'person', 'pin', '__proto__'),
      fc.jsonValue({ maxDepth: 2 }),
    ),
  )
  await fc.assert(
    fc.asyncProperty(fc.constantFrom(...names), anything, async (name, input) => {
      atLead.person = crew.lead
      const before = imprintOf(desk.folder)
      const result = await desk.desk.call(atLead, name, input)
      if (result.ok) return
      expect(Refusal.parse(result.refusal)).toEqual(result.refusal)
      expect(imprintOf(desk.folder)).toBe(before)
    }),
    { seed: 14, numRuns: 300 },
  )
  atLead.person = crew.lead
})

test('a station cannot be set up with anything but its contract', async () => {
  expect(await desk.refusal('station.setUp', { ...setUpInput, practice: true })).toMatchObject({
    code: 'bad-input',
  })
})
