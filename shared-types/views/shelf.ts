/** The shelf: the station logs that lie in this laptop's folder. */
import { z } from 'zod'
import { LocalDate } from '../local-date.ts'
import { DeskId } from '../sample-number.ts'

export const LogOnShelf = z.strictObject({
  file: z.string(),
  desk: DeskId.nullable(),
  name: z.string(),
  practice: z.boolean(),
  /** A merged log, not that of a station desk. */
  office: z.boolean(),
  entries: z.int().nonnegative(),
  lastMs: z.int().nonnegative().nullable(),
  /** Why it cannot be opened for work, or null. */
  trouble: z.string().nullable(),
})

export const ShelfView = z.strictObject({
  /** The file that is open, or null. */
  open: z.string().nullable(),
  /** It was written by a newer version, so it can be looked at and no more. */
  readOnly: z.boolean(),
  logs: z.array(LogOnShelf),
  today: LocalDate,
  zone: z.string(),
})
export type ShelfView = z.infer<typeof ShelfView>
