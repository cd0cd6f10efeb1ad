import { z } from 'zod'
import { Species } from '../animal.ts'
import { CoolerState } from '../cooler.ts'
import { AnimalNumber, BagNumber, CoolerNumber } from '../sample-number.ts'
import { Keeping } from '../station.ts'
import { Kept, TissueCheck, TissueSite } from '../tissue.ts'
import { Ms } from './common.ts'

export const ReadingView = z.strictObject({
  ms: Ms,
  celsius: z.number(),
  excursion: z.boolean(),
  by: z.string(),
  /** The logger's file; empty where a person read it. */
  source: z.string(),
})
export type ReadingView = z.infer<typeof ReadingView>

export const BagView = z.strictObject({
  bag: BagNumber,
  animal: AnimalNumber,
  species: Species,
  site: TissueSite,
  kept: Kept,
  check: TissueCheck,
  sealedMs: Ms,
  /** When a fresh chilled sample must be frozen or delivered; null when the clock does not run. */
  holdUntilMs: Ms.nullable(),
  /** It lay in a cooler while that was outside its limits. */
  excursion: z.boolean(),
})
export type BagView = z.infer<typeof BagView>

export const CoolerView = z.strictObject({
  cooler: CoolerNumber,
  name: z.string(),
  keeping: Keeping,
  capacity: z.int().nullable(),
  state: CoolerState,
  seal: z.string().nullable(),
  bags: z.int(),
  lastReading: ReadingView.nullable(),
  /** The earliest hold limit among its bags. */
  holdUntilMs: Ms.nullable(),
  limits: z.strictObject({ low: z.number(), high: z.number() }),
})
export type CoolerView = z.infer<typeof CoolerView>

export const CoolersView = z.strictObject({
  nowMs: Ms,
  coolers: z.array(CoolerView),
  /** Sealed bags not yet in a cooler. */
  bench: z.array(BagView),
})
export type CoolersView = z.infer<typeof CoolersView>

export const CoolerInsideView = z.strictObject({
  cooler: CoolerView,
  bags: z.array(BagView),
  readings: z.array(ReadingView),
})
export type CoolerInsideView = z.infer<typeof CoolerInsideView>
