/** What has been answered so far about the animal at the window, before the desk hears of it. */
import type {
  AgeClass,
  Consent,
  HarvestPlace,
  HeadFault,
  Presented,
  Programme,
  Sex,
  Species,
} from '../../shared-types/animal.ts'
import type { HarvestUnit } from '../../shared-types/station.ts'

/** The questions in the order they are asked; each is one stop of the Enter key. */
export const steps = [
  'hunter',
  'tag',
  'consent',
  'species',
  'sex',
  'presented',
  'age',
  'harvested',
  'faults',
  'by',
  'unit',
  'place',
  'latitude',
  'longitude',
  'programme',
  'name',
  'phone',
  'email',
] as const
export type Step = (typeof steps)[number]

export interface Draft {
  readonly hunter: string
  readonly tag: string
  readonly species: Species | null
  readonly sex: Sex | null
  readonly age: AgeClass | null
  readonly presented: Presented | null
  /** None: the head is whole. */
  readonly faults: readonly HeadFault[]
  readonly by: HarvestPlace['by']
  readonly unit: string
  readonly place: string
  readonly latitude: string
  readonly longitude: string
  readonly harvested: string
  /** Local time of the shot or kill; empty when the hunter does not know it. */
  readonly harvestedAt: string
  readonly consent: Consent | null
  /** Null: as the unit has it. */
  readonly programme: Programme | null
  readonly name: string
  readonly phone: string
  readonly email: string
}

/** A blank draft for the first animal of the day. */
export function emptyDraft(today: string): Draft {
  return {
    hunter: '',
    tag: '',
    species: null,
    sex: null,
    age: null,
    presented: null,
    faults: [],
    by: 'unit',
    unit: '',
    place: '',
    latitude: '',
    longitude: '',
    harvested: today,
    harvestedAt: '',
    consent: null,
    programme: null,
    name: '',
    phone: '',
    email: '',
  }
}

/** The next animal: species, unit and date often repeat; who and what it is must be asked anew. */
export function draftAfter(last: Draft): Draft {
  const { species, unit, harvested } = last
  return { ...emptyDraft(harvested), species, unit }
}

/** The programme that holds: what was chosen by hand, else what the unit says. */
export function programmeOf(draft: Draft, units: readonly HarvestUnit[]): Programme {
  if (draft.programme !== null) return draft.programme
  return unitByCode(draft.unit, units)?.mandatory === true ? 'mandatory' : 'voluntary'
}

export function unitByCode(code: string, units: readonly HarvestUnit[]): HarvestUnit | undefined {
  return units.find((unit) => unit.code.toUpperCase() === code.trim().toUpperCase())
}
