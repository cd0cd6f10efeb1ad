/** An animal brought to the station: a carcass or a head, and the hunter who answers for it. */
import { z } from 'zod'
import { LocalDate, TimeOfDay } from './local-date.ts'
import { AnimalNumber, PersonId } from './sample-number.ts'

export const Species = z.enum(['white-tailed-deer', 'mule-deer', 'elk', 'moose'])
export type Species = z.infer<typeof Species>

export const speciesWords: Record<Species, string> = {
  'white-tailed-deer': 'white-tailed deer',
  'mule-deer': 'mule deer',
  elk: 'elk',
  moose: 'moose',
}

export const Sex = z.enum(['male', 'female', 'unknown'])
export type Sex = z.infer<typeof Sex>

/** Age class read from the lower jaw. `young` is young of the year: fawn or calf. */
export const AgeClass = z.enum(['young', 'yearling', 'adult'])
export type AgeClass = z.infer<typeof AgeClass>

export const ageWords: Record<AgeClass, string> = {
  young: 'young of the year',
  yearling: 'yearling',
  adult: 'adult',
}

/** What is wrong with a head; a head with nothing here is whole. */
export const HeadFault = z.enum([
  'skinned',
  'skull-plate-cut',
  'head-shot',
  'neck-shot',
  'frozen',
  'spoiled',
])
export type HeadFault = z.infer<typeof HeadFault>

export const headFaultWords: Record<HeadFault, string> = {
  skinned: 'skinned for the taxidermist',
  'skull-plate-cut': 'skull plate cut',
  'head-shot': 'head shot',
  'neck-shot': 'neck shot',
  frozen: 'frozen',
  spoiled: 'spoiled',
}

export const Presented = z.enum(['carcass', 'head-only'])
export type Presented = z.infer<typeof Presented>

export const HeadCondition = z.strictObject({
  presented: Presented,
  faults: z.array(HeadFault),
})
export type HeadCondition = z.infer<typeof HeadCondition>

/** Where the animal was taken. A sample without a usable place is commonly not tested. */
export const HarvestPlace = z.discriminatedUnion('by', [
  z.strictObject({
    by: z.literal('unit'),
    unit: z.string().trim().min(1).max(12),
    /** Road, drainage, section: words a map reader can find. May be empty. */
    place: z.string().trim().max(120),
  }),
  z.strictObject({
    by: z.literal('coordinates'),
    /** Degrees, WGS 84. */
    latitude: z.number().min(-90).max(90),
    longitude: z.number().min(-180).max(180),
    unit: z.string().trim().max(12),
  }),
  z.strictObject({ by: z.literal('not-known') }),
])
export type HarvestPlace = z.infer<typeof HarvestPlace>

export const Programme = z.enum(['mandatory', 'voluntary'])
export type Programme = z.infer<typeof Programme>

/** The hunter's agreement to cutting the head or throat. */
export const Consent = z.enum(['given', 'refused'])
export type Consent = z.infer<typeof Consent>

export const AnimalFacts = z.strictObject({
  hunter: z.string().trim().min(1).max(30),
  tag: z.string().trim().toUpperCase().min(1).max(30),
  species: Species,
  sex: Sex,
  age: AgeClass,
  harvested: LocalDate,
  /** The hour of the harvest, where the hunter was asked: tissue spoils by the hour. */
  harvestedAt: TimeOfDay.optional(),
  place: HarvestPlace,
  head: HeadCondition,
  consent: Consent,
  programme: Programme,
})
export type AnimalFacts = z.infer<typeof AnimalFacts>

/** How to reach the hunter. Never in an entry: the entry holds a salted digest of it. */
export const Contact = z.strictObject({
  name: z.string().trim().max(80),
  phone: z.string().trim().max(40),
  email: z.string().trim().max(120),
})
export type Contact = z.infer<typeof Contact>

/** Why an animal is recorded but does not join the line. */
export const NoSampleReason = z.enum(['consent-refused', 'age-not-taken', 'species-not-taken'])
export type NoSampleReason = z.infer<typeof NoSampleReason>

export const noSampleWords: Record<NoSampleReason, string> = {
  'consent-refused': 'hunter does not agree to cutting',
  'age-not-taken': 'age class not sampled here',
  'species-not-taken': 'species not sampled here',
}

export const AnimalCheckedIn = z.strictObject({
  animal: AnimalNumber,
  /** The station's day that was open; after midnight it may not be the calendar's. */
  day: LocalDate,
  facts: AnimalFacts,
  /** SHA-256 of salt and contact, or null when the hunter left none. */
  contact: z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .nullable(),
  noSample: NoSampleReason.nullable(),
})

export const AnimalAmended = z.strictObject({
  animal: AnimalNumber,
  facts: AnimalFacts,
  noSample: NoSampleReason.nullable(),
  reason: z.string().trim().min(3).max(200),
})

export const AnimalAssigned = z.strictObject({ animal: AnimalNumber, sampler: PersonId })

export const AnimalPutBack = z.strictObject({
  animal: AnimalNumber,
  reason: z.string().trim().min(3).max(200),
})

export const AnimalLeft = z.strictObject({
  animal: AnimalNumber,
  reason: z.string().trim().min(3).max(200),
})

/** A check-in that its own maker took back: the record stays, the animal is none of the day's. */
export const AnimalStruckOut = z.strictObject({ animal: AnimalNumber })

export const Outcome = z.enum(['both', 'one', 'none'])
export type Outcome = z.infer<typeof Outcome>

export const outcomeWords: Record<Outcome, string> = {
  both: 'both sides',
  one: 'one side',
  none: 'none',
}

export const AnimalFinished = z.strictObject({
  animal: AnimalNumber,
  sampler: PersonId,
  outcome: Outcome,
})

/** Its bags changed after it was finished: the outcome follows, and the hour it was finished stays. */
export const AnimalOutcomeChanged = z.strictObject({ animal: AnimalNumber, outcome: Outcome })

/** Where an animal stands. `recorded`: checked in, but not to be sampled here. */
export const AnimalState = z.enum([
  'waiting',
  'with-sampler',
  'finished',
  'left',
  'recorded',
  'struck-out',
])
export type AnimalState = z.infer<typeof AnimalState>

export const animalStateWords: Record<AnimalState, string> = {
  waiting: 'waiting',
  'with-sampler': 'with sampler',
  finished: 'finished',
  left: 'left unsampled',
  recorded: 'recorded only',
  'struck-out': 'check-in taken back',
}

/** An animal as the log knows it now. */
export interface AnimalRecord {
  readonly animal: AnimalNumber
  readonly day: LocalDate
  readonly facts: AnimalFacts
  readonly contact: string | null
  readonly noSample: NoSampleReason | null
  readonly state: AnimalState
  readonly arrivedMs: number
  readonly assignedMs: number | null
  readonly sampler: PersonId | null
  readonly outcome: Outcome | null
  readonly finishedMs: number | null
}
