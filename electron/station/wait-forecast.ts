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

/** Four of five waits should fall in the range told: from the 10th to the 90th percentile. */
export const heldShare = 0.8
/**
 * The share of the simulated waits that a day begins with: a simulation knows less of a morning than it
 * believes. On practice days, ranges begun at 0.8 held for 77 waits in 100, begun at 0.9 for 79.
 */
export const firstShare = 0.9
/** How far one wait that held or did not moves the percentiles, and how far they may move at all. */
const [step, narrowest, widest] = [0.04, 0.6, 0.98]

/**
 * The share of the simulated waits to put in the range, so that four of five real ones fall in it: more
 * when waits told today have not held, less when too many have, since no model knows a real morning.
 * Source: Gibbs & Candès, "Adaptive Conformal Inference Under Distribution Shift", NeurIPS 2021.
 *
 * @param past waits told that are over, in the order in which they ended.
 */
export function shareToCover(past: readonly PastWait[]): number {
  return past.reduce((share, each) => {
    const missed = isWithin(each, each.minutes) ? 0 : 1
    const moved = share + step * (missed - (1 - heldShare))
    return Math.min(widest, Math.max(narrowest, moved))
  }, firstShare)
}

/**
 * The forecast of each animal here, as wide as this share of the simulated waits, in the order given; null where nobody who is or will be here can
 * work it before the last of them goes.
 */
export function forecastWaits(
  scenario: Omit<Scenario, 'runs' | 'followComing'>,
  draws: Draws,
  share = heldShare,
): (WaitRange | null)[] {
  const { waits } = simulateLine({ ...scenario, runs: replications, followComing: false }, draws)
  return waits.map((each) => rangeOf(each, share))
}

/** Sorts the waits in place: they are this forecast's own. */
function rangeOf(waits: Float64Array, share: number): WaitRange | null {
  waits.sort()
  const [lowShare, highShare] = [(1 - share) / 2, (1 + share) / 2]
  const at = (place: number) => waits[Math.round((waits.length - 1) * place)] ?? Infinity
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
  /** How many of those waits fell in the range told; four of five should. */
  readonly held: number
}

/** A wait that was told and is over. */
export interface PastWait {
  readonly low: number
  readonly high: number
  readonly minutes: number
}

/** How well the forecasts told so far have held. */
export function heldOf(past: readonly PastWait[]): Held {
  return {
    told: past.length,
    held: past.filter((each) => isWithin(each, each.minutes)).length,
  }
}
