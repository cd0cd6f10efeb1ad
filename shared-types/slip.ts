/** A slip: an action that its own maker takes back within a minute, by an amendment. */
import { z } from 'zod'
import { AnimalNumber, BagNumber, DeskId } from './sample-number.ts'

/** Which entry was taken back; the entries beside this one put the record right. */
export const SlipTakenBack = z.strictObject({
  desk: DeskId,
  seq: z.int().min(1),
  kind: z.string().regex(/^[a-z]+\.[a-z-]+$/),
  animal: AnimalNumber.optional(),
  bag: BagNumber.optional(),
})
