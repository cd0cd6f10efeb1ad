import { z } from 'zod'
import { VarianceReason } from '../close.ts'
import { LocalDate } from '../local-date.ts'
import { DeskId, PersonId, SeasonStation } from '../sample-number.ts'
import { StationItem } from '../station-close.ts'
import { Ms, Need } from './common.ts'
import { DayTotals } from './line.ts'

/** One thing added up over the desks of a station. */
export const StationItemView = z.strictObject({
  key: z.string(),
  item: StationItem,
  words: z.string(),
  expected: z.int(),
  counted: z.int(),
  variance: z.int(),
  /** How much of what is expected went from one desk to another, by the merged log. */
  between: z.int(),
  /** What each desk signed for, with the reasons it gave. */
  desks: z.array(
    z.strictObject({
      desk: DeskId,
      expected: z.int(),
      counted: z.int(),
      reasons: z.array(z.string()),
    }),
  ),
  explained: z.strictObject({ reason: VarianceReason, words: z.string() }).nullable(),
})
export type StationItemView = z.infer<typeof StationItemView>

/** A desk's own close, as the merged log has it. */
export const DeskCloseView = z.strictObject({
  desk: DeskId,
  name: z.string(),
  state: z.enum(['closed', 'open', 'no-day']),
  lead: z.string().nullable(),
  second: z.string().nullable(),
  aloneBecause: z.string(),
  closedMs: Ms.nullable(),
  /** What was amended after its first close, one sentence each with when and by whom. */
  amended: z.array(z.string()),
})
export type DeskCloseView = z.infer<typeof DeskCloseView>

/** A day of a station in the record. */
export const StationDay = z.strictObject({
  station: SeasonStation,
  name: z.string(),
  date: LocalDate,
  desks: z.int(),
  closed: z.int(),
  signed: z.boolean(),
})
export type StationDay = z.infer<typeof StationDay>

export const StationCloseView = z.strictObject({
  /** Every day of every station in the record, the latest first. */
  days: z.array(StationDay),
  /** The day asked for, or the latest; null while there is none. */
  day: StationDay.nullable(),
  desks: z.array(DeskCloseView),
  totals: DayTotals.nullable(),
  items: z.array(StationItemView),
  open: z.array(Need),
  /** Discrepancies of the record that nobody has settled. */
  unsettled: z.int(),
  signed: z
    .strictObject({
      lead: z.string(),
      second: z.string().nullable(),
      aloneBecause: z.string(),
      ms: Ms,
      /** The desks have changed since: it is to be signed again. */
      outdated: z.boolean(),
    })
    .nullable(),
  second: z.strictObject({
    wanted: z.boolean(),
    people: z.array(z.strictObject({ person: PersonId, name: z.string() })),
  }),
})
export type StationCloseView = z.infer<typeof StationCloseView>
