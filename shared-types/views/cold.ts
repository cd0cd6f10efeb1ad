import { z } from 'zod'
import { BagNumber, CoolerNumber } from '../sample-number.ts'
import { Ms } from './common.ts'

/** The first lines of a logger's file, cut into columns, for a person to say what is what. */
export const LoggerLookView = z.strictObject({
  rows: z.array(z.array(z.string())),
  columns: z.int(),
  lines: z.int(),
})
export type LoggerLookView = z.infer<typeof LoggerLookView>

/** A time without a reading that is much longer than the usual one. */
export const GapView = z.strictObject({ fromMs: Ms, toMs: Ms })
export type GapView = z.infer<typeof GapView>

/** What a file would bring, before it is taken in. */
export const LoggerPreview = z.strictObject({
  readings: z.int(),
  fromMs: Ms,
  toMs: Ms,
  lowest: z.number(),
  highest: z.number(),
  excursions: z.int(),
  gaps: z.array(GapView),
  /** Lines that hold no reading, by their number in the file; the first few. */
  skipped: z.array(z.int()),
  skippedInAll: z.int(),
})
export type LoggerPreview = z.infer<typeof LoggerPreview>

/** A time outside the limits, from the last good reading before it to the first good one after. */
export const ExcursionView = z.strictObject({
  fromMs: Ms,
  /** Null while it goes on. */
  toMs: Ms.nullable(),
  lowest: z.number(),
  highest: z.number(),
  /** Only the bags that lay in the cooler at that time. */
  bags: z.array(BagNumber),
})
export type ExcursionView = z.infer<typeof ExcursionView>

export const ColdView = z.strictObject({
  cooler: CoolerNumber,
  limits: z.strictObject({ low: z.number(), high: z.number() }),
  points: z.array(
    z.strictObject({
      ms: Ms,
      celsius: z.number(),
      excursion: z.boolean(),
      by: z.string(),
      /** The logger's file; empty where a person read it. */
      source: z.string(),
    }),
  ),
  gaps: z.array(GapView),
  excursions: z.array(ExcursionView),
  /** Null without readings. */
  kinetic: z
    .strictObject({
      celsius: z.number(),
      /** Hours from the first reading to the last. */
      windowHours: z.number(),
      peak: z.number(),
      peakMs: Ms,
    })
    .nullable(),
})
export type ColdView = z.infer<typeof ColdView>

/** How long ice lasts: the figure, and the range it lies in about nineteen times in twenty. */
export const IceView = z.strictObject({
  hours: z.number(),
  lowHours: z.number(),
  highHours: z.number(),
  untilMs: Ms,
  /** Watts that come in through the walls. */
  watts: z.number(),
  wattsPerDegree: z.number(),
  /** Ice that cools the warm tissue first, in kilograms. */
  spentOnTissueKg: z.number(),
  /** How many readings the heat gain was fitted from; null where it was stated. */
  fittedFrom: z.int().nullable(),
})
export type IceView = z.infer<typeof IceView>

/** One thing that must be frozen or delivered, and by when. */
export const HoldItem = z.strictObject({
  /** Null for bags on the bench. */
  cooler: CoolerNumber.nullable(),
  name: z.string(),
  untilMs: Ms,
  isLate: z.boolean(),
  /** Those due within the hour of the first, of so many whose clock runs; and when the last of them is due. */
  bags: z.array(BagNumber),
  of: z.int(),
  lastMs: Ms,
})
export const HoldView = z.strictObject({
  nowMs: Ms,
  items: z.array(HoldItem),
})
export type HoldView = z.infer<typeof HoldView>
