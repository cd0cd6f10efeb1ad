/** From the draft to what the desk takes, or to the questions still open. */
import type { CallInput } from '../../shared-types/desk-api.ts'
import type { HarvestUnit } from '../../shared-types/station.ts'
import { type Draft, type Step, programmeOf, steps, unitByCode } from './draft.ts'

type CheckIn = CallInput<'animal.checkIn'>

export type Missing = Partial<Record<Step, string>>

/** The draft as the desk takes it, or the questions still open, each with what to do. */
export function checkInOf(
  draft: Draft,
  units: readonly HarvestUnit[],
): { ready: CheckIn } | { missing: Missing } {
  const { species, sex, age, presented, consent } = draft
  const missing = openQuestions(draft)
  if (!species || !sex || !age || !presented || !consent || Object.keys(missing).length > 0)
    return { missing }
  const facts: CheckIn['facts'] = {
    hunter: draft.hunter,
    tag: draft.tag,
    species,
    sex,
    age,
    harvested: draft.harvested,
    ...(draft.harvestedAt === '' ? {} : { harvestedAt: draft.harvestedAt }),
    place: placeOf({ ...draft, unit: unitByCode(draft.unit, units)?.code ?? draft.unit }),
    head: { presented, faults: [...draft.faults] },
    consent,
    programme: programmeOf(draft, units),
  }
  return { ready: { facts, contact: contactOf(draft) } }
}

function placeOf({ by, unit, place, latitude, longitude }: Draft): CheckIn['facts']['place'] {
  if (by === 'not-known') return { by }
  if (by === 'unit') return { by, unit, place }
  return { by, unit, latitude: degrees(latitude), longitude: degrees(longitude) }
}

function contactOf({ name, phone, email }: Draft): CheckIn['contact'] {
  return `${name}${phone}${email}`.trim() === '' ? null : { name, phone, email }
}

/** Decimal degrees as typed; NaN when it is no number. A comma is taken for a point. */
export function degrees(typed: string): number {
  const text = typed.trim().replace(',', '.')
  return text === '' ? Number.NaN : Number(text)
}

function openQuestions(draft: Draft): Missing {
  const open: Missing = {}
  if (draft.hunter.trim() === '') open.hunter = 'Scan or type the hunter id.'
  if (draft.tag.trim() === '') open.tag = 'Scan or type the tag number.'
  if (draft.species === null) open.species = 'Choose the species.'
  if (draft.sex === null) open.sex = 'Choose the sex, or unknown.'
  if (draft.age === null) open.age = 'Choose the age class from the lower jaw.'
  if (draft.presented === null) open.presented = 'Choose carcass or head only.'
  if (draft.consent === null) open.consent = 'Ask the hunter and choose yes or no.'
  if (draft.harvested === '') open.harvested = 'Enter the date of harvest.'
  return { ...open, ...openPlace(draft) }
}

function openPlace({ by, unit, latitude, longitude }: Draft): Missing {
  if (by === 'unit')
    return unit.trim() === '' ? { unit: 'Enter the unit, or choose another way to say where.' } : {}
  if (by === 'not-known') return {}
  const open: Missing = {}
  if (!(Math.abs(degrees(latitude)) <= 90)) open.latitude = 'A number from -90 to 90, like 44.0731.'
  if (!(Math.abs(degrees(longitude)) <= 180))
    open.longitude = 'A number from -180 to 180, like -108.9512.'
  return open
}

/** The first question in asking order among those named. */
export function firstStep(named: Missing): Step | undefined {
  return steps.find((step) => named[step] !== undefined)
}

/** The question a refusal points at: its field's last word that is one of ours. */
export function stepOfField(field: string | undefined): Step | undefined {
  const words = (field ?? '').split('.').toReversed()
  return words.map((word) => steps.find((step) => step === word)).find((step) => step !== undefined)
}
