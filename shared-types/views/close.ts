import { z } from 'zod'
import { CountItem, VarianceReason } from '../close.ts'
import { LocalDate } from '../local-date.ts'
import { DayState } from './people.ts'
import { Ms, Need } from './common.ts'
import { DayTotals } from './line.ts'

/** One thing to count. What the log expects stays hidden until a count is entered: a blind count. */
export const CloseItem = z.strictObject({
  key: z.string(),
  item: CountItem,
  words: z.string(),
  counted: z.int().nullable(),
  expected: z.int().nullable(),
  variance: z.int().nullable(),
  explained: z.strictObject({ reason: VarianceReason, words: z.string() }).nullable(),
})
export type CloseItem = z.infer<typeof CloseItem>

export const CloseView = z.strictObject({
  date: LocalDate.nullable(),
  state: DayState,
  signed: z.strictObject({ lead: z.string(), ms: Ms }).nullable(),
  items: z.array(CloseItem),
  /** What stands in the way of signing. */
  open: z.array(Need),
  totals: DayTotals,
})
export type CloseView = z.infer<typeof CloseView>
