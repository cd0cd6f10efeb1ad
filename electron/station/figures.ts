/** The day in numbers: totals by state and outcome, and how long animals waited. */
import type { AnimalState, Outcome } from '../../shared-types/animal.ts'
import type { PersonId } from '../../shared-types/sample-number.ts'
import type { DayTotals, Waits } from '../../shared-types/views/line.ts'

export interface AnimalFigures {
  readonly state: AnimalState
  readonly outcome: Outcome | null
  readonly arrivedMs: number
  readonly assignedMs: number | null
  readonly finishedMs: number | null
  readonly sampler: PersonId | null
}

/** Animals of a day by where they stand. */
export function dayTotals(animals: readonly AnimalFigures[]): DayTotals {
  const inState = (state: AnimalState) => animals.filter((each) => each.state === state).length
  const withOutcome = (outcome: Outcome) =>
    animals.filter((each) => each.state === 'finished' && each.outcome === outcome).length
  return {
    checkedIn: animals.length,
    waiting: inState('waiting'),
    withSampler: inState('with-sampler'),
    finished: inState('finished'),
    outcomes: { both: withOutcome('both'), one: withOutcome('one'), none: withOutcome('none') },
    left: inState('left'),
    recorded: inState('recorded'),
  }
}

/**
 * The value below which a share of the numbers lies, by linear interpolation between order
 * statistics: type 7 of Hyndman & Fan, "Sample Quantiles in Statistical Packages",
 * The American Statistician 50(4), 1996. Null for no numbers.
 */
export function quantile(numbers: readonly number[], share: number): number | null {
  return quantileOfSorted(Float64Array.from(numbers).sort(), share)
}

function quantileOfSorted(sorted: Float64Array, share: number): number | null {
  if (sorted.length === 0) return null
  const place = (sorted.length - 1) * share
  const low = sorted[Math.floor(place)] ?? 0
  const high = sorted[Math.ceil(place)] ?? low
  return low + (high - low) * (place - Math.floor(place))
}

/** The 10th, 50th and 90th percentile; null for no numbers. */
export function lowTypicalHigh(
  numbers: readonly number[],
): { low: number; typical: number; high: number } | null {
  const sorted = Float64Array.from(numbers).sort()
  const low = quantileOfSorted(sorted, 0.1)
  const typical = quantileOfSorted(sorted, 0.5)
  const high = quantileOfSorted(sorted, 0.9)
  return low === null || typical === null || high === null ? null : { low, typical, high }
}

/** Minutes from check-in to the sampler, of the animals that reached one. */
export function waits(animals: readonly AnimalFigures[]): Waits {
  const minutes = animals
    .filter((each) => each.assignedMs !== null)
    .map((each) => ((each.assignedMs ?? 0) - each.arrivedMs) / 60_000)
  return { medianMinutes: quantile(minutes, 0.5), ninetiethMinutes: quantile(minutes, 0.9) }
}

/** Minutes from assignment to finish, of animals that were finished. */
export function minutesOfWork(animals: readonly AnimalFigures[]): number[] {
  return animals.flatMap(({ assignedMs, finishedMs }) =>
    assignedMs !== null && finishedMs !== null ? [(finishedMs - assignedMs) / 60_000] : [],
  )
}
