import { z } from 'zod'
import { CountItem, VarianceReason } from '../close.ts'
import { AnimalNumber, BagNumber, CoolerNumber, KitNumber, SampleNumber } from '../sample-number.ts'
import { Screen } from './common.ts'

/** What the log itself suggests behind a variance. */
export const CauseCode = z.enum([
  'kit-not-returned',
  'kit-from-other-hands',
  'kits-moved-unsaid',
  'kit-spoiled-unrecorded',
  'label-printed-twice',
  'sheet-jammed',
  'bag-in-no-cooler',
  'bag-in-other-cooler',
  'bag-missing',
  'animal-with-sampler',
  'animal-checked-in-twice',
])
export type CauseCode = z.infer<typeof CauseCode>

/** The one command that settles it, ready to be given. */
export const Settle = z.discriminatedUnion('command', [
  z.strictObject({
    command: z.literal('variance.explain'),
    input: z.strictObject({ item: CountItem, reason: VarianceReason, words: z.string() }),
  }),
  z.strictObject({
    command: z.literal('bag.place'),
    input: z.strictObject({ bag: BagNumber, cooler: CoolerNumber }),
  }),
  z.strictObject({
    command: z.literal('bag.takeOut'),
    input: z.strictObject({ bag: BagNumber, reason: z.string() }),
  }),
  z.strictObject({
    command: z.literal('kit.spoil'),
    input: z.strictObject({ kit: KitNumber, reason: z.string() }),
  }),
  z.strictObject({
    command: z.literal('animal.finish'),
    input: z.strictObject({ animal: AnimalNumber }),
  }),
])
export type Settle = z.infer<typeof Settle>

export const Cause = z.strictObject({
  code: CauseCode,
  /** The bag, kit, label, animal, person or cooler it is about. */
  about: SampleNumber,
  /** How well the log bears it out, 0 to 100; causes are listed by it. */
  evidence: z.int().min(0).max(100),
  /** What seems to have happened, with the times behind it. */
  say: z.string(),
  next: z.string(),
  look: z.strictObject({ screen: Screen, number: SampleNumber.nullable() }),
  settle: Settle.nullable(),
})
export type Cause = z.infer<typeof Cause>
