import { describe, expect, test } from 'vitest'
import { dealIncidents, type Incident } from '../../electron/station/practice/incidents.ts'
import { practiceDay, practiceMorning } from '../../electron/station/practice/plan.ts'
import { Chance } from '../../electron/station/practice/random.ts'
import type { DeskScript } from '../../electron/station/practice/script.ts'
import { AnimalFacts, Contact } from '../../shared-types/animal.ts'
import { deskApi } from '../../shared-types/desk-api.ts'
import { deskLetters } from '../../shared-types/sample-number.ts'

const told = (script: DeskScript, name: string) =>
  script.steps.flatMap((step) =>
    step.is === 'told' && step.name === name ? [step.input as Record<string, unknown>] : [],
  )

const factsOf = (script: DeskScript) =>
  told(script, 'animal.checkIn').map(({ facts }) => AnimalFacts.parse(facts))

describe('a practice day, made up', () => {
  test('is the same day for the same seed, and another for another', () => {
    const day = (seed: number) => practiceDay({ seed, animals: 60, desks: 2 })
    expect(day(7)).toEqual(day(7))
    expect(day(7)).not.toEqual(day(8))
  })

  test('shares the arrivals of the station out among its desks, each animal with a tag of its own', () => {
    const desks = practiceDay({ seed: 3, animals: 200, desks: 3 })
    const tags = desks.flatMap((desk) => factsOf(desk).map(({ tag }) => tag))
    expect(tags.length).toBe(200)
    expect(new Set(tags).size).toBe(200)
    for (const desk of desks) expect(factsOf(desk).length).toBe(desk.animals)
  })

  test('gives desks different letters, none that can be misread', () => {
    const desks = practiceDay({ seed: 1, animals: 18, desks: deskLetters.length })
    expect(new Set(desks.map(({ desk }) => desk)).size).toBe(18)
    expect(desks.map(({ desk }) => desk.at(-1)).join('')).toBe('ACDEFHJKMNPQRTVWXY')
  })

  test('is told in the order of time, in inputs that the contract takes', () => {
    for (const { steps } of practiceDay({ seed: 5, animals: 80, desks: 2 })) {
      const times = steps.map(({ atMs }) => atMs)
      expect(times).toEqual(times.toSorted((a, b) => a - b))
      for (const step of steps)
        if (step.is === 'told')
          expect(deskApi[step.name].input.safeParse(step.input).error).toBeUndefined()
    }
  })

  test('uses addresses and telephone numbers that belong to nobody', () => {
    const [desk] = practiceDay({ seed: 5, animals: 80, desks: 1 })
    const contacts = told(desk as DeskScript, 'animal.checkIn').flatMap(({ contact }) =>
      contact === null ? [] : [Contact.parse(contact)],
    )
    expect(contacts.length).toBeGreaterThan(40)
    for (const { phone, email } of contacts) {
      // 555-0100 to 555-0199 are kept free for invented numbers (North American Numbering Plan).
      expect(phone).toMatch(/^555-01\d\d$/)
      // example.org is reserved (RFC 2606, section 3).
      expect(email).toMatch(/^$|@example\.org$/)
    }
  })
})

describe('what does not go as it should', () => {
  const everyKind: readonly Incident[] = [
    'consent-refused',
    'young',
    'species-not-taken',
    'place-not-known',
    'amended',
    'leaves-for-good',
    'leaves-and-returns',
    'labels-at-check-in',
    'put-back',
    'reassigned',
    'kit-spoiled',
    'label-torn',
    'bag-split',
    'one-sided',
    'wrong-tissue-first',
    'unsure',
    'wrong-cooler',
  ]

  test('happens at least once a day, whatever the seed', () => {
    for (let seed = 1; seed <= 50; seed += 1) {
      const heads = Array.from({ length: 30 }, () => true)
      const struck = new Set(dealIncidents(new Chance(seed, 1), heads).flatMap((each) => [...each]))
      expect([seed, everyKind.filter((kind) => !struck.has(kind))]).toEqual([seed, []])
    }
  })

  test('strikes at the bench only heads that are sound and animals that are worked', () => {
    const chance = new Chance(4, 1)
    const heads = Array.from({ length: 400 }, () => chance.happens(0.7))
    const atBench: readonly Incident[] = ['label-torn', 'bag-split', 'kit-spoiled', 'one-sided']
    const unworked: readonly Incident[] = ['young', 'consent-refused', 'leaves-for-good']
    dealIncidents(chance, heads).forEach((incidents, place) => {
      if (!atBench.some((each) => incidents.has(each))) return
      expect(heads[place]).toBe(true)
      expect(unworked.some((each) => incidents.has(each))).toBe(false)
    })
  })
})

describe('a practice morning, made up', () => {
  const nowMs = Date.UTC(2026, 10, 14, 16, 40, 12)
  const morning = (seed: number, animals = 40, now = nowMs) =>
    practiceMorning({ seed, animals, nowMs: now, zone: 'America/Denver' })

  test('ends now, with nothing yet to come', () => {
    const { steps } = morning(1)
    const last = steps.at(-1)?.atMs ?? 0
    expect(last).toBeLessThanOrEqual(nowMs)
    expect(nowMs - last).toBeLessThan(2 * 60_000)
  })

  test('belongs to the day on the calendar, also when it is played after midnight', () => {
    const midnight = Date.UTC(2026, 10, 14, 7, 0)
    const { date, steps } = morning(1, 40, midnight + 30 * 60_000)
    expect(date).toBe('2026-11-14')
    expect(steps[0]?.atMs).toBeLessThan(midnight)
    for (const { harvested } of factsOf(morning(1, 40, midnight + 30 * 60_000)))
      expect(harvested).toBe('2026-11-13')
  })

  test('is left before its close', () => {
    expect(told(morning(2), 'day.close')).toEqual([])
    expect(told(morning(2), 'cooler.seal')).toEqual([])
  })
})
