/** How long each will wait: a range that four of five such waits fall into. */
import { type Draws, replications } from './draws.ts'
import { type Scenario, simulateLine } from './line-simulation.ts'

/** Minutes from arrival to the sampler. */
export interface WaitRange {
  readonly low: number
  readonly typical: number
  readonly high: number
  /** Share of the simulated waits within the range, in whole minutes as they are told. */
  readonly chance: number
}

/** The range told: from the 10th to the 90th percentile. */
const [lowShare, highShare] = [0.1, 0.9]

/**
 * The forecast of each animal here, in the order given; null where nobody who is or will be here can
 * work it before the last of them goes.
 */
export function forecastWaits(
  scenario: Omit<Scenario, 'runs' | 'followComing'>,
  draws: Draws,
): (WaitRange | null)[] {
  const { waits } = simulateLine({ ...scenario, runs: replications, followComing: false }, draws)
  return waits.map(rangeOf)
}

/** Sorts the waits in place: they are this forecast's own. */
function rangeOf(waits: Float64Array): WaitRange | null {
  waits.sort()
  const at = (share: number) => waits[Math.floor((waits.length - 1) * share)] ?? Infinity
  if (at(highShare) === Infinity) return null
  const [low, high] = [Math.round(at(lowShare)), Math.round(at(highShare))]
  const within = waits.reduce((sum, wait) => sum + Number(isWithin({ low, high }, wait)), 0)
  return { low, typical: at(0.5), high, chance: within / waits.length }
}

/** Whether a wait was as told: to the whole minute, as it was told. */
export function isWithin({ low, high }: Pick<WaitRange, 'low' | 'high'>, minutes: number): boolean {
  const whole = Math.round(minutes)
  return whole >= low && whole <= high
}

export interface Held {
  /** Hunters who were told a wait and whose animal has reached a sampler. */
  readonly told: number
  /** How many of those waits fell in the range told. */
  readonly held: number
  /** How many the forecasts themselves expected to. */
  readonly expected: number
}

/** How well the forecasts told so far have held. */
export function heldOf(
  past: readonly {
    readonly low: number
    readonly high: number
    readonly chance: number
    readonly minutes: number
  }[],
): Held {
  return {
    told: past.length,
    held: past.filter((each) => isWithin(each, each.minutes)).length,
    expected: past.reduce((sum, { chance }) => sum + chance, 0),
  }
}
