import { z } from 'zod'
import { AnimalNumber, PersonId } from '../sample-number.ts'
import { Ms, Need } from './common.ts'

/** Minutes: one wait in ten is shorter than `low`, one in ten longer than `high`. */
export const MinutesRange = z.strictObject({
  low: z.number(),
  typical: z.number(),
  high: z.number(),
})
export type MinutesRange = z.infer<typeof MinutesRange>

export const SuggestionView = z.strictObject({
  animal: AnimalNumber,
  sampler: PersonId,
  name: z.string(),
  /** One sentence that a lead can repeat. */
  why: z.string(),
})
export type SuggestionView = z.infer<typeof SuggestionView>

/** Who works what next, and how long each will wait from now. */
export const ForecastView = z.strictObject({
  nowMs: Ms,
  suggestions: z.array(SuggestionView),
  /** In the order of the line; null where nobody on shift can work the animal. */
  waits: z.array(z.strictObject({ animal: AnimalNumber, range: MinutesRange.nullable() })),
  /** For a hunter who drives in now. */
  carNow: MinutesRange.nullable(),
  /** Of the waits told today that are over, how many fell in the range told; four of five should. */
  held: z.strictObject({ told: z.int(), held: z.int() }),
  air: z.strictObject({ celsius: z.number(), ms: Ms }).nullable(),
  obstacles: z.array(Need),
})
export type ForecastView = z.infer<typeof ForecastView>

export const DayOutlookView = z.strictObject({
  typical: z.number().nullable(),
  ninetieth: z.number().nullable(),
  /** Animals that nobody would take before the last sampler goes home. */
  leftOver: z.int(),
})
export type DayOutlookView = z.infer<typeof DayOutlookView>

/** One hour of the day: what was, or what is to be expected. */
export const HourView = z.strictObject({
  fromMs: Ms,
  is: z.enum(['past', 'now', 'ahead']),
  /** Animals that came; null for hours ahead. */
  came: z.int().nullable(),
  /** Animals expected in the rest of the hour; null for hours past. */
  expected: MinutesRange.nullable(),
  /** Minutes of wait of those who came, or would. */
  wait: MinutesRange.nullable(),
})
export type HourView = z.infer<typeof HourView>

export const KitHolderView = z.strictObject({
  person: PersonId,
  name: z.string(),
  kits: z.int(),
  /** Chance that they last until the close. */
  chance: z.number(),
  shortAtMs: Ms.nullable(),
  enough: z.int(),
})
export type KitHolderView = z.infer<typeof KitHolderView>

/** A move of kits that the lead can make with one key. */
export const KitMoveView = z.strictObject({
  /** Null for stock. */
  from: PersonId.nullable(),
  to: PersonId,
  count: z.int(),
  say: z.string(),
})
export type KitMoveView = z.infer<typeof KitMoveView>

export const KitsAheadView = z.strictObject({
  /** In stock and in hands. */
  kits: z.int(),
  chance: z.number(),
  shortAtMs: Ms.nullable(),
  enough: z.int(),
  ask: z.int(),
  holders: z.array(KitHolderView),
  moves: z.array(KitMoveView),
  /** Kits needed from now to each moment. */
  track: z.array(z.strictObject({ ms: Ms, need: MinutesRange })),
})
export type KitsAheadView = z.infer<typeof KitsAheadView>

/** The rest of the day: arrivals, waits, samplers, kits. */
export const AheadView = z.strictObject({
  nowMs: Ms,
  closesMs: Ms,
  came: z.int(),
  /** Animals still to come today. */
  more: MinutesRange,
  hours: z.array(HourView),
  targetWaitMinutes: z.int(),
  staffing: z.strictObject({
    working: z.int(),
    /** Animals in the last hour, and what one sampler does in an hour. */
    lastHour: z.int(),
    perSamplerHour: z.number(),
    /** The steady state at the last hour's arrivals (Erlang C), in a sentence. */
    steadySay: z.string(),
    steadyNeeds: z.int(),
    outlook: DayOutlookView,
    /** More samplers that keep the typical wait at the target, or null when no number up to 7 does. */
    toAdd: z.int().nullable(),
    say: z.string(),
  }),
  whatIf: DayOutlookView.extend({ say: z.string() }).nullable(),
  kits: KitsAheadView,
  obstacles: z.array(Need),
})
export type AheadView = z.infer<typeof AheadView>
