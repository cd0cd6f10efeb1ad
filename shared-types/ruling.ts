/** Ruling: what a settled discrepancy comes to in the record, where settling it has a plain meaning. */
import { z } from 'zod'
import { AnimalFacts, NoSampleReason, Outcome } from './animal.ts'
import {
  AnimalNumber,
  BagNumber,
  CoolerNumber,
  HandoffNumber,
  KitNumber,
  PersonId,
} from './sample-number.ts'
import { TissueSite } from './tissue.ts'

const someAnimals = z.array(AnimalNumber).max(50)

/**
 * A fact like any other: what is shown, counted and exported follows it from then on. Of two offices that
 * ruled differently the later one is followed, and the discrepancy stays open until they agree.
 */
export const Ruling = z.discriminatedUnion('is', [
  /** One animal that was recorded more than once is counted by one of its records. */
  z.strictObject({ is: z.literal('one-animal'), kept: AnimalNumber, same: someAnimals }),
  z.strictObject({ is: z.literal('separate-animals'), animals: someAnimals }),
  z.strictObject({
    is: z.literal('bag-of'),
    bag: BagNumber,
    animal: AnimalNumber,
    kit: KitNumber,
    site: TissueSite,
  }),
  z.strictObject({ is: z.literal('bag-in'), bag: BagNumber, cooler: CoolerNumber }),
  z.strictObject({ is: z.literal('bag-with'), bag: BagNumber, handoff: HandoffNumber }),
  z.strictObject({
    is: z.literal('kit-of'),
    kit: KitNumber,
    animal: AnimalNumber,
    sampler: PersonId,
  }),
  z.strictObject({
    is: z.literal('facts'),
    animal: AnimalNumber,
    facts: AnimalFacts,
    noSample: NoSampleReason.nullable(),
  }),
  z.strictObject({ is: z.literal('outcome'), animal: AnimalNumber, outcome: Outcome }),
])
export type Ruling = z.infer<typeof Ruling>
