import { z } from 'zod'
import {
  AgeClass,
  AnimalState,
  HeadCondition,
  Outcome,
  Programme,
  Sex,
  Species,
} from '../animal.ts'
import { AnimalNumber, KitNumber, PersonId } from '../sample-number.ts'
import { Ms, Need } from './common.ts'
import { PersonView } from './people.ts'

export const LineAnimal = z.strictObject({
  animal: AnimalNumber,
  hunter: z.string(),
  tag: z.string(),
  species: Species,
  sex: Sex,
  age: AgeClass,
  head: HeadCondition,
  programme: Programme,
  /** Whether the laboratory can use the place of harvest as it stands. */
  placeUsable: z.boolean(),
  state: AnimalState,
  arrivedMs: Ms,
  assignedMs: Ms.nullable(),
  sampler: PersonId.nullable(),
  /** The kit opened on this animal, else the one whose labels were printed for it, else null. */
  kit: KitNumber.nullable(),
  kitOpened: z.boolean(),
  /** Samplers on duty whose training fits this head. */
  canWork: z.array(PersonId),
})
export type LineAnimal = z.infer<typeof LineAnimal>

export const KitsLow = z.enum(['enough', 'low', 'none'])

export const CrewMember = PersonView.extend({
  kits: z.int(),
  kitsLow: KitsLow,
  /** Animals in this person's hands, the one being worked first. */
  animals: z.array(AnimalNumber),
  finishedToday: z.int(),
  /** Median minutes from assignment to finish today, or null before the first. */
  usualMinutes: z.number().nullable(),
})
export type CrewMember = z.infer<typeof CrewMember>

export const DayTotals = z.strictObject({
  checkedIn: z.int(),
  waiting: z.int(),
  withSampler: z.int(),
  finished: z.int(),
  outcomes: z.record(Outcome, z.int()),
  left: z.int(),
  recorded: z.int(),
})
export type DayTotals = z.infer<typeof DayTotals>

/** Minutes from check-in to the sampler, of the animals that reached one today. */
export const Waits = z.strictObject({
  medianMinutes: z.number().nullable(),
  ninetiethMinutes: z.number().nullable(),
})
export type Waits = z.infer<typeof Waits>

export const LineView = z.strictObject({
  nowMs: Ms,
  /** In the order they should be worked. */
  waiting: z.array(LineAnimal),
  working: z.array(LineAnimal),
  crew: z.array(CrewMember),
  kitsInStock: z.int(),
  totals: DayTotals,
  waits: Waits,
  targetWaitMinutes: z.int(),
  needs: z.array(Need),
})
export type LineView = z.infer<typeof LineView>
