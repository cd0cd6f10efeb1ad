import { z } from 'zod'
import { AnimalFacts, AnimalState, Contact, NoSampleReason, Outcome } from '../animal.ts'
import { AnimalNumber, BagNumber, KitNumber, PersonId } from '../sample-number.ts'
import { BagPlace, Kept, MissedReason, TissueCheck, TissueSite } from '../tissue.ts'
import { Ms } from './common.ts'

/** One tissue of one animal on the bench. */
export const SiteView = z.strictObject({
  site: TissueSite,
  kept: Kept,
  /** What was last seen on the cut face, or null before the first look. */
  check: TissueCheck.nullable(),
  sizeMm: z.number().nullable(),
  missed: z.strictObject({ reason: MissedReason, words: z.string() }).nullable(),
  bag: BagNumber.nullable(),
  bagPlace: BagPlace.nullable(),
  /** The bag label that belongs here once a kit is opened. */
  expectedBag: BagNumber.nullable(),
})
export type SiteView = z.infer<typeof SiteView>

/** One line of the story: what an entry says in plain words. */
export const StoryLine = z.strictObject({
  ms: Ms,
  by: z.string(),
  kind: z.string(),
  say: z.string(),
})
export type StoryLine = z.infer<typeof StoryLine>

export const AnimalView = z.strictObject({
  animal: AnimalNumber,
  facts: AnimalFacts,
  /** Only for those who may see it: lead, volunteer, office. */
  contact: Contact.nullable(),
  hasContact: z.boolean(),
  state: AnimalState,
  noSample: NoSampleReason.nullable(),
  outcome: Outcome.nullable(),
  sampler: PersonId.nullable(),
  kit: KitNumber.nullable(),
  kitOpened: z.boolean(),
  arrivedMs: Ms,
  /** Whether the laboratory can use the place of harvest. */
  placeUsable: z.boolean(),
  sites: z.array(SiteView),
  story: z.array(StoryLine),
})
export type AnimalView = z.infer<typeof AnimalView>

/** The bench of one sampler: the animals in hand, the one being worked first. */
export const BenchView = z.strictObject({
  sampler: PersonId,
  kitsInHand: z.int(),
  animals: z.array(AnimalView),
  /** The next animals in the line this sampler can work. */
  nextInLine: z.array(AnimalNumber),
})
export type BenchView = z.infer<typeof BenchView>

/** An animal that already carries a tag. */
export const TagSeenView = z.strictObject({
  seen: z
    .strictObject({ animal: AnimalNumber, arrivedMs: Ms, hunter: z.string(), state: AnimalState })
    .nullable(),
})
