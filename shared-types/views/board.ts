/** What a screen outside shows to hunters: numbers and waits, nothing about a person. */
import { z } from 'zod'
import { AnimalNumber } from '../sample-number.ts'
import { Ms } from './common.ts'

export const BoardView = z.strictObject({
  station: z.string(),
  zone: z.string(),
  practice: z.boolean(),
  nowMs: Ms,
  /** In the order they will be worked. */
  waiting: z.array(z.strictObject({ animal: AnimalNumber, arrivedMs: Ms })),
  working: z.array(AnimalNumber),
  /** Median minutes that animals waited today, or null before the first. */
  usualWaitMinutes: z.number().nullable(),
})
export type BoardView = z.infer<typeof BoardView>
