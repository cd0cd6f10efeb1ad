/** The close: the end-of-day reconciliation of what the log expects with what people count. */
import { z } from 'zod'
import { Outcome } from './animal.ts'
import { LocalDate } from './local-date.ts'
import { BagNumber, CoolerNumber, PersonId } from './sample-number.ts'

/** A thing that is counted at dusk. */
export const CountItem = z.discriminatedUnion('of', [
  z.strictObject({ of: z.literal('animals') }),
  z.strictObject({ of: z.literal('bags'), cooler: CoolerNumber }),
  z.strictObject({ of: z.literal('kits-in-stock') }),
  z.strictObject({ of: z.literal('kits-in-hand'), person: PersonId }),
  z.strictObject({ of: z.literal('blank-labels') }),
  z.strictObject({ of: z.literal('unused-kit-labels') }),
])
export type CountItem = z.infer<typeof CountItem>

/** The item as a key of tables: its kind, with the cooler or person it belongs to. */
export function countItemKey(item: CountItem): string {
  if (item.of === 'bags') return `bags:${item.cooler}`
  return item.of === 'kits-in-hand' ? `kits-in-hand:${item.person}` : item.of
}

const Count = z.int().min(0).max(1_000_000)

/** `bags`: of a cooler counted by scanning each bag, their numbers; null where it was counted by eye. */
export const CountEntered = z.strictObject({
  date: LocalDate,
  item: CountItem,
  counted: Count,
  bags: z.array(BagNumber).max(5000).nullable(),
})

export const VarianceReason = z.enum([
  'miscounted-during-day',
  'given-away',
  'spoiled-not-recorded',
  'used-not-recorded',
  'lost',
  'found',
  'wrong-opening-count',
  'not-given-back',
  'other-hands',
  'other-desk',
  'other',
])
export type VarianceReason = z.infer<typeof VarianceReason>

export const varianceWords: Record<VarianceReason, string> = {
  'miscounted-during-day': 'miscounted during the day',
  'given-away': 'given to another station',
  'spoiled-not-recorded': 'spoiled, not recorded',
  'used-not-recorded': 'used, not recorded',
  lost: 'lost',
  found: 'found again',
  'wrong-opening-count': 'opening count was wrong',
  'not-given-back': 'taken home, not given back',
  'other-hands': 'came from other hands',
  'other-desk': 'is at another desk of the station',
  other: 'other',
}

/** An explanation holds for one expected and one counted number; when either moves it is asked again. */
export const VarianceExplained = z.strictObject({
  date: LocalDate,
  item: CountItem,
  expected: z.int(),
  counted: Count,
  reason: VarianceReason,
  words: z.string().trim().max(200),
})

export const ClosedItem = z.strictObject({
  item: CountItem,
  expected: z.int(),
  counted: Count,
  reason: VarianceReason.nullable(),
  words: z.string(),
})

export const DayClosed = z.strictObject({
  date: LocalDate,
  lead: PersonId,
  /** Who counted and signed beside the lead; null where the lead closed alone, for a reason. */
  second: PersonId.nullable(),
  aloneBecause: z.string().trim().max(200),
  items: z.array(ClosedItem),
  animals: z.strictObject({
    checkedIn: Count,
    outcomes: z.record(Outcome, Count),
    left: Count,
    recorded: Count,
  }),
})

/** What the lead of a day leaves the next one to know. A later note of the same day replaces it. */
export const HandoverWritten = z.strictObject({
  date: LocalDate,
  words: z.string().trim().min(3).max(600),
})
