/** How a station runs its line: what goes first, how long work takes, how many come and when. */
import { z } from 'zod'
import { TimeOfDay } from './local-date.ts'
import { AnimalNumber, PersonId } from './sample-number.ts'

/** Usual minutes from taking a whole head to its last bag: the median, before anyone has worked. */
const UsualMinutes = z.number().min(0.5).max(120)

/** A stretch of the day, to the next one or to the close, and how busy it is against the others. */
export const ProfileStretch = z.strictObject({
  from: TimeOfDay,
  weight: z.number().min(0).max(1000),
})
export type ProfileStretch = z.infer<typeof ProfileStretch>

export const LineSettings = z.strictObject({
  /** Animals whose sampling is mandatory go before voluntary ones. */
  mandatoryFirst: z.boolean(),
  /** Nobody is overtaken by more than this many that came later and that the same sampler could work. */
  overtakenAtMost: z.int().min(0).max(50),
  /** Hours since harvest, at 10 degrees Celsius, after which an animal goes first. */
  spoilingHours: z.number().min(1).max(240),
  usualMinutes: z.strictObject({
    deer: UsualMinutes,
    elkOrMoose: UsualMinutes,
    /** Between two animals: cleaning, paper, the next hunter walking up. */
    between: UsualMinutes,
  }),
  /** How many times as long a damaged or skinned head takes. */
  damagedHeadTimes: z.number().min(1).max(10),
  opens: TimeOfDay,
  closes: TimeOfDay,
  profile: z.array(ProfileStretch).min(1).max(48),
  /** Animals expected on a day like this. */
  expectedAnimals: z.number().min(1).max(20_000),
  /** How far off that may be, as a share of it (one standard deviation); 0 for a number known well. */
  expectedSpread: z.number().min(0).max(3),
  /** Usual length of a break. */
  breakMinutes: z.int().min(1).max(240),
  samplersAtTable: z.int().min(1).max(20),
})
export type LineSettings = z.infer<typeof LineSettings>

/** What a hunter was told at check-in: a range of minutes until a sampler takes the animal. */
export const WaitTold = z.strictObject({
  animal: AnimalNumber,
  lowMinutes: z.int().min(0),
  highMinutes: z.int().min(0),
  /** How many in a hundred such waits the forecast itself expected within the range. */
  chance: z.int().min(0).max(100),
})

/** A lead did something else than the desk suggested. */
export const SuggestionOverridden = z.strictObject({
  /** The animal suggested, and to whom. */
  animal: AnimalNumber,
  sampler: PersonId,
  /** What the sampler got instead; null when only this suggestion was set aside. */
  instead: AnimalNumber.nullable(),
  /** The sentence that was shown. */
  why: z.string().max(300),
})

/** The air at the line, in degrees Celsius: heads spoil faster when it is warm. */
export const AirRead = z.strictObject({ celsius: z.number().min(-60).max(60) })
