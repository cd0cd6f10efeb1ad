import { describe, expect, test } from 'vitest'
import {
  checkInWarnings,
  decideAmend,
  decideCheckIn,
  noSampleReason,
  placeUsable,
} from '../../electron/station/check-in.ts'
import type { AnimalFacts } from '../../shared-types/animal.ts'
import { factsOf, settings } from '../support/station.ts'
import { animal, code, date, refusal, written } from './records.ts'

const today = date('2026-11-14')
const view = { settings, today, day: today, tagHolder: null }
const buck = animal(1)

function checkIn(facts: AnimalFacts, changed: Partial<typeof view> = {}) {
  return decideCheckIn({ ...view, ...changed }, buck.animal, facts, null)
}

describe('an animal is checked in', () => {
  test('and joins the line when it is to be sampled', () => {
    const facts = factsOf()
    expect(written(checkIn(facts))).toEqual([
      {
        kind: 'animal.checked-in',
        v: 1,
        body: { animal: buck.animal, day: today, facts, contact: null, noSample: null },
      },
    ])
  })

  test('once: a tag that is already here is refused, naming the animal that carries it', () => {
    const holder = animal(7)
    const refused = refusal(
      decideCheckIn({ ...view, tagHolder: holder }, buck.animal, factsOf({ tag: 'T1' }), null),
    )
    expect(refused.code).toBe('tag-already-here')
    expect(refused.say).toContain('26-KRV-A0007-A')
    expect(refused.field).toBe('facts.tag')
  })

  test('on the day of harvest or later, never before it', () => {
    expect(checkIn(factsOf({ harvested: today })).ok).toBe(true)
    expect(checkIn(factsOf({ harvested: date('2026-11-12') })).ok).toBe(true)
    expect(code(checkIn(factsOf({ harvested: date('2026-11-15') })))).toBe('harvest-in-future')
  })

  test('with a harvest unit of the list, or with none at all', () => {
    const at = (unit: string) => factsOf({ place: { by: 'unit', unit, place: 'Dry Fork' } })
    expect(checkIn(at('14')).ok).toBe(true)
    expect(code(checkIn(at('99')))).toBe('unit-unknown')
    const marked = { by: 'coordinates', latitude: 44.1, longitude: -109.2, unit: '' } as const
    expect(checkIn(factsOf({ place: marked })).ok).toBe(true)
    expect(code(checkIn(factsOf({ place: { ...marked, unit: '99' } })))).toBe('unit-unknown')
    expect(checkIn(factsOf({ place: { by: 'not-known' } })).ok).toBe(true)
  })
})

test('an animal that comes after midnight belongs to the day that is still open', () => {
  const late = { ...view, today: date('2026-11-15') }
  const facts = factsOf({ harvested: date('2026-11-15') })
  const [entry] = written(decideCheckIn(late, buck.animal, facts, null))
  expect(entry?.body).toMatchObject({ day: '2026-11-14' })
})

describe('an animal is recorded, but not sampled', () => {
  test.each([
    ['its hunter does not agree to cutting', { consent: 'refused' }, 'consent-refused'],
    ['its species is not sampled here', { species: 'moose' }, 'species-not-taken'],
    ['it is young of the year and only older animals are taken', { age: 'young' }, 'age-not-taken'],
  ] as const)('when %s', (_, changed, reason) => {
    expect(noSampleReason(settings, factsOf(changed))).toBe(reason)
    expect(written(checkIn(factsOf(changed)))[0]?.body).toMatchObject({ noSample: reason })
  })

  test('and the missing consent is told before anything else', () => {
    const facts = factsOf({ consent: 'refused', species: 'moose', age: 'young' })
    expect(noSampleReason(settings, facts)).toBe('consent-refused')
  })
})

describe('the place of harvest is good enough for the laboratory', () => {
  const needing = (locationNeed: typeof settings.locationNeed) => ({ ...settings, locationNeed })
  const unit = factsOf({ place: { by: 'unit', unit: '12', place: '' } })
  const place = factsOf({ place: { by: 'unit', unit: '12', place: 'Dry Fork' } })
  const point = factsOf({
    place: { by: 'coordinates', latitude: 44, longitude: -109, unit: '' },
  })
  const unknown = factsOf({ place: { by: 'not-known' } })

  test.each([
    ['unit', [true, true, true, false]],
    ['unit-and-place', [false, true, true, false]],
    ['coordinates', [false, false, true, false]],
  ] as const)('where it needs %s', (need, usable) => {
    const found = [unit, place, point, unknown].map((facts) => placeUsable(needing(need), facts))
    expect(found).toEqual(usable)
  })

  test('and a volunteer hears so while the hunter is still there', () => {
    expect(checkInWarnings(settings, place)).toEqual([])
    expect(checkInWarnings(settings, unit).join()).toContain('Ask the hunter again')
  })

  test('and a frozen or spoiled head is told too', () => {
    const head = (fault: 'frozen' | 'spoiled') =>
      checkInWarnings(settings, factsOf({ head: { presented: 'head-only', faults: [fault] } }))
    expect(head('frozen').join()).toContain('until it has thawed')
    expect(head('spoiled').join()).toContain('may not be tested')
  })
})

describe('a correction', () => {
  const amend = (facts: AnimalFacts, tagHolder: typeof buck | null = buck) =>
    decideAmend({ ...view, tagHolder, animal: buck }, facts, 'hunter showed the tag again')

  test('keeps the reason, and says anew whether the animal is sampled', () => {
    const [entry] = written(amend(factsOf({ age: 'young' })))
    expect(entry).toMatchObject({
      kind: 'animal.amended',
      body: { noSample: 'age-not-taken', reason: 'hunter showed the tag again' },
    })
  })

  test('may leave the animal its own tag, but not give it the tag of another', () => {
    expect(amend(factsOf()).ok).toBe(true)
    expect(code(amend(factsOf(), animal(2)))).toBe('tag-already-here')
  })

  test('is held to the same facts as a check-in', () => {
    expect(code(amend(factsOf({ harvested: date('2026-12-01') })))).toBe('harvest-in-future')
  })
})
