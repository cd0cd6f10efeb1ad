import { z } from 'zod'
import { CountItem, VarianceReason } from '../close.ts'
import { LocalDate } from '../local-date.ts'
import { AnimalNumber, BagNumber, CoolerNumber, PersonId } from '../sample-number.ts'
import { Keeping } from '../station.ts'
import { Cause } from './cause.ts'
import { DayState } from './people.ts'
import { Ms, Need } from './common.ts'
import { DayTotals } from './line.ts'

/** One count of a thing: the last stands, those before it are kept. */
export const CountTry = z.strictObject({ counted: z.int(), by: z.string(), ms: Ms })
export type CountTry = z.infer<typeof CountTry>

/** One thing to count. What the log expects stays hidden until a count is entered: a blind count. */
export const CloseItem = z.strictObject({
  key: z.string(),
  item: CountItem,
  words: z.string(),
  counted: z.int().nullable(),
  expected: z.int().nullable(),
  variance: z.int().nullable(),
  /** Of a cooler counted by scanning: bags that should be in it, and bags that should not. */
  scanned: z.strictObject({ missing: z.array(BagNumber), extra: z.array(BagNumber) }).nullable(),
  explained: z.strictObject({ reason: VarianceReason, words: z.string() }).nullable(),
  /** Every count of it, the latest first. */
  tries: z.array(CountTry),
  /** What may be behind the variance, the best borne out first. */
  causes: z.array(Cause),
})
export type CloseItem = z.infer<typeof CloseItem>

/** What goes over into the next day. */
export const CarryOver = z.strictObject({
  kitsInStock: z.int(),
  kitsInHands: z.int(),
  blankLabels: z.int(),
  coolers: z.array(
    z.strictObject({
      cooler: CoolerNumber,
      name: z.string(),
      keeping: Keeping,
      bags: z.int(),
    }),
  ),
  bagsFrozen: z.int(),
})
export type CarryOver = z.infer<typeof CarryOver>

/** Kits for another day like this one. */
export const KitsTomorrow = z.strictObject({
  /** Animals expected, and how many of a hundred need a kit. */
  animals: z.int(),
  needKit: z.int(),
  /** Kits that 95 of 100 such days need, and how many to ask for beside those here. */
  enough: z.int(),
  here: z.int(),
  ask: z.int(),
})
export type KitsTomorrow = z.infer<typeof KitsTomorrow>

export const HandoverNote = z.strictObject({
  date: LocalDate,
  words: z.string(),
  by: z.string(),
  ms: Ms,
})
export type HandoverNote = z.infer<typeof HandoverNote>

export const HandoverView = z.strictObject({
  /** The note of the last day that has one; null before the first. */
  note: HandoverNote.nullable(),
  carry: CarryOver,
  tomorrow: KitsTomorrow,
})
export type HandoverView = z.infer<typeof HandoverView>

/** Every label printed here, by what became of it. */
export const LabelAccount = z.strictObject({
  printed: z.int(),
  used: z.int(),
  void: z.int(),
  /** Not used yet, and found. */
  unused: z.int(),
  /** Neither used nor void, and not found. */
  unaccounted: z.int(),
})
export type LabelAccount = z.infer<typeof LabelAccount>

export const CloseView = z.strictObject({
  date: LocalDate.nullable(),
  state: DayState,
  signed: z
    .strictObject({
      lead: z.string(),
      second: z.string().nullable(),
      aloneBecause: z.string(),
      ms: Ms,
    })
    .nullable(),
  items: z.array(CloseItem),
  /** What stands in the way of signing. */
  open: z.array(Need),
  /** Animals and bags left between two places, each with what seems to have happened. */
  between: z.array(Cause),
  /** Animals of the day to be sampled, or sampled, whose place of harvest the laboratory cannot use. */
  placesMissing: z.array(AnimalNumber),
  /** Who may sign beside the lead, and whether somebody must. */
  second: z.strictObject({
    wanted: z.boolean(),
    people: z.array(z.strictObject({ person: PersonId, name: z.string() })),
  }),
  totals: DayTotals,
  /** Null until the unused labels are counted: a blind count. */
  labels: LabelAccount.nullable(),
})
export type CloseView = z.infer<typeof CloseView>
