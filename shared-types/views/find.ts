/** Finding anything by letters or a scan, and its story: the entries about it as a timeline. */
import { z } from 'zod'
import { AnimalNumber, SampleNumber } from '../sample-number.ts'
import { StoryLine } from './animal.ts'

/** What a story is of. A hunter or tag may have several animals; the story is then of them all. */
export const StoryOf = z.discriminatedUnion('is', [
  z.strictObject({ is: z.literal('number'), number: SampleNumber }),
  z.strictObject({ is: z.literal('hunter'), hunter: z.string().min(1).max(30) }),
  z.strictObject({ is: z.literal('tag'), tag: z.string().min(1).max(30) }),
])
export type StoryOf = z.infer<typeof StoryOf>

export const SeekHit = z.strictObject({
  of: StoryOf,
  /** `Kit K0007`, `Hunter H123456`. */
  title: z.string(),
  say: z.string(),
})
export type SeekHit = z.infer<typeof SeekHit>

export const SeekView = z.strictObject({ hits: z.array(SeekHit) })

export const StoryView = z.strictObject({
  title: z.string(),
  say: z.string(),
  /** The animals it is about. */
  animals: z.array(AnimalNumber),
  lines: z.array(StoryLine),
})
export type StoryView = z.infer<typeof StoryView>
