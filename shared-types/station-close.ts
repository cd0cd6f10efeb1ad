/**
 * The station's close: several desks work at one station, each closes by itself, and over the merged log
 * an office closes the station. What evens out between desks is no variance there.
 */
import { z } from 'zod'
import { Outcome } from './animal.ts'
import { VarianceReason } from './close.ts'
import { LocalDate } from './local-date.ts'
import { CoolerNumber, DeskId, PersonId, SeasonStation } from './sample-number.ts'

/** What is added up over the desks of a station; a cooler is one thing, whoever filled it. */
export const StationItem = z.discriminatedUnion('of', [
  z.strictObject({ of: z.literal('animals') }),
  z.strictObject({ of: z.literal('kits') }),
  z.strictObject({ of: z.literal('blank-labels') }),
  z.strictObject({ of: z.literal('unused-kit-labels') }),
  z.strictObject({ of: z.literal('bags'), cooler: CoolerNumber }),
])
export type StationItem = z.infer<typeof StationItem>

/** The item as a key of tables. */
export function stationItemKey(item: StationItem): string {
  return item.of === 'bags' ? `bags:${item.cooler}` : item.of
}

const Count = z.int().min(0).max(1_000_000)
const Words = z.string().trim().max(200)

/** An explanation holds for one expected and one counted number; when either moves it is asked again. */
export const StationVarianceExplained = z.strictObject({
  station: SeasonStation,
  date: LocalDate,
  item: StationItem,
  expected: z.int(),
  counted: Count,
  reason: VarianceReason,
  words: Words,
})

export const StationClosed = z.strictObject({
  station: SeasonStation,
  date: LocalDate,
  lead: PersonId,
  /** Who signed beside the lead; null where the lead closed alone, for a reason. */
  second: PersonId.nullable(),
  aloneBecause: Words,
  /** The desks' own closes that were signed over, by the hashes of their entries. */
  desks: z.array(z.strictObject({ desk: DeskId, close: z.string().regex(/^[0-9a-f]{64}$/) })),
  items: z.array(
    z.strictObject({
      item: StationItem,
      expected: z.int(),
      counted: Count,
      reason: VarianceReason.nullable(),
      words: z.string(),
    }),
  ),
  animals: z.strictObject({
    checkedIn: Count,
    outcomes: z.record(Outcome, Count),
    left: Count,
    recorded: Count,
  }),
})
