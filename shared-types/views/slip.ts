/** What whoever sits at a window did last, while it can still be taken back. */
import { z } from 'zod'
import { Ms } from './common.ts'

export const SlipView = z.strictObject({
  slip: z.strictObject({ say: z.string(), untilMs: Ms }).nullable(),
})
export type SlipView = z.infer<typeof SlipView>
