import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import {
  type Crew,
  checkIn,
  factsOf,
  leadPin,
  openStation,
  sampleBoth,
  type TestDesk,
} from '../support/desk.ts'
import { tablesOf } from '../support/raw-log.ts'

let desk: TestDesk
let crew: Crew
beforeAll(async () => {
  ;({ desk, crew } = await openStation())
})
beforeEach(() => desk.sit(crew.volunteer))
afterAll(() => desk.end())

const contact = { name: 'Wren Ostler', phone: '555-0142', email: 'wren@example.org' }

describe('the tag', () => {
  test('that is here already is told while it is typed, and refused when it is sent', async () => {
    const animal = await checkIn(desk, { tag: 'MD-104', hunter: 'H77' })
    const { seen } = await desk.ask('tagSeen', { tag: ' md-104 ' })
    expect(seen).toMatchObject({ animal, hunter: 'H77', state: 'waiting' })
    const again = { facts: factsOf({ tag: 'md-104' }), contact: null }
    expect(await desk.refusal('animal.checkIn', again)).toMatchObject({
      code: 'tag-already-here',
      field: 'facts.tag',
    })
    expect((await desk.ask('tagSeen', { tag: 'MD-10' })).seen).toBeNull()
  })

  test('stays with its animal after the hunter left, and after a correction', async () => {
    const animal = await checkIn(desk, { tag: 'MD-200' })
    await desk.ask('animal.leave', { animal, reason: 'had to drive home' })
    expect(
      await desk.code('animal.checkIn', { facts: factsOf({ tag: 'MD-200' }), contact: null }),
    ).toBe('tag-already-here')
    const other = await checkIn(desk, { tag: 'MD-201' })
    const amended = { animal: other, facts: factsOf({ tag: 'MD-200' }), reason: 'misread the tag' }
    expect(await desk.code('animal.amend', amended)).toBe('tag-already-here')
    await desk.ask('animal.amend', { ...amended, facts: factsOf({ tag: 'MD-202' }) })
    expect((await desk.ask('tagSeen', { tag: 'MD-201' })).seen).toBeNull()
    await checkIn(desk, { tag: 'MD-201' })
  })
})

describe('a check-in', () => {
  test('gives the numbers out one after the other', async () => {
    const first = await checkIn(desk)
    const second = await checkIn(desk)
    expect(Number(second.slice(6, 10))).toBe(Number(first.slice(6, 10)) + 1)
  })

  test('tells the volunteer what to say to the hunter, and does not stop for it', async () => {
    const facts = factsOf({ place: { by: 'unit', unit: '12', place: '' } })
    const { warnings, noSample } = await desk.ask('animal.checkIn', { facts, contact: null })
    expect(noSample).toBeNull()
    expect(warnings.join()).toContain('not precise enough')
  })

  test('of an animal that is not sampled keeps it off the line', async () => {
    const { animal, noSample } = await desk.ask('animal.checkIn', {
      facts: factsOf({ consent: 'refused' }),
      contact: null,
    })
    expect(noSample).toBe('consent-refused')
    const { waiting } = await desk.ask('line', {})
    expect(waiting.map((each) => each.animal)).not.toContain(animal)
    await desk.sit(crew.sampler)
    expect(await desk.code('animal.assign', { animal, sampler: crew.sampler })).toBe(
      'animal-not-in-line',
    )
  })
})

describe('a correction', () => {
  test('brings an animal onto the line or off it, while nobody has begun on it', async () => {
    const animal = await checkIn(desk, { age: 'young' })
    const state = async () => (await desk.ask('animal', { animal })).state
    expect(await state()).toBe('recorded')
    await desk.ask('animal.amend', {
      animal,
      facts: factsOf(),
      reason: 'six cheek teeth after all',
    })
    expect(await state()).toBe('waiting')
    await desk.ask('animal.amend', {
      animal,
      facts: factsOf({ species: 'moose' }),
      reason: 'moose after all',
    })
    expect(await state()).toBe('recorded')
  })

  test('leaves a finished animal finished, and both facts in its story', async () => {
    const animal = await checkIn(desk)
    await desk.sit(crew.sampler)
    await sampleBoth(desk, animal, crew.sampler)
    await desk.sit(crew.volunteer)
    await desk.ask('animal.amend', {
      animal,
      facts: factsOf({ sex: 'female' }),
      reason: 'antlerless buck was a doe',
    })
    const view = await desk.ask('animal', { animal })
    expect(view).toMatchObject({ state: 'finished', outcome: 'both', facts: { sex: 'female' } })
    expect(view.story.at(0)?.say).toContain('male')
    expect(view.story.at(-1)?.say).toBe('Facts corrected: antlerless buck was a doe.')
  })
})

describe('how to reach the hunter', () => {
  test('is seen by those who tell results, and not by the sampler', async () => {
    const { animal } = await desk.ask('animal.checkIn', { facts: factsOf(), contact })
    expect(await desk.ask('animal', { animal })).toMatchObject({ contact, hasContact: true })
    await desk.sit(crew.lead, leadPin)
    expect((await desk.ask('animal', { animal })).contact).toEqual(contact)
    await desk.sit(crew.sampler)
    expect(await desk.ask('animal', { animal })).toMatchObject({ contact: null, hasContact: true })
  })

  test('is nothing when the hunter left nothing', async () => {
    const empty = { name: ' ', phone: '', email: '' }
    const { animal } = await desk.ask('animal.checkIn', { facts: factsOf(), contact: empty })
    expect(await desk.ask('animal', { animal })).toMatchObject({ contact: null, hasContact: false })
  })

  test('cannot be guessed from the entry: the same contact twice makes two digests', async () => {
    for (let twice = 0; twice < 2; twice += 1)
      await desk.ask('animal.checkIn', { facts: factsOf(), contact })
    const digests =
      tablesOf(desk.file)
        .get('animal')
        ?.map((row) => row.contact) ?? []
    const kept = digests.filter(Boolean)
    expect(kept.length).toBeGreaterThan(2)
    expect(new Set(kept).size).toBe(kept.length)
  })
})
