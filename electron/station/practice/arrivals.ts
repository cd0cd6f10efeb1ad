/**
 * When animals come: a Poisson process whose rate changes over the day. Given how many come, their
 * times are independent draws from the rate's own shape, put in order (Ross, "Introduction to
 * Probability Models", section on nonhomogeneous Poisson processes, order statistics).
 */
import type { Chance } from './random.ts'

/** How busy each stretch of the day is against the others. */
export interface ArrivalRates {
  readonly fromMinute: number
  /** Length of one stretch in minutes. */
  readonly stretch: number
  readonly rates: readonly number[]
}

/** The share of the day's animals that has come by a minute. */
export function shareCome({ fromMinute, stretch, rates }: ArrivalRates, minute: number): number {
  const total = rates.reduce((sum, rate) => sum + rate, 0)
  const come = rates.reduce((sum, rate, place) => {
    const passed = (minute - fromMinute) / stretch - place
    return sum + rate * Math.min(1, Math.max(0, passed))
  }, 0)
  return come / total
}

/** The minute by which a share of the day's animals has come: the inverse of `shareCome`. */
function minuteOfShare({ fromMinute, stretch, rates }: ArrivalRates, share: number): number {
  let left = share * rates.reduce((sum, rate) => sum + rate, 0)
  for (const [place, rate] of rates.entries()) {
    if (left < rate) return fromMinute + stretch * (place + left / rate)
    left -= rate
  }
  return fromMinute + stretch * rates.length
}

/** The minutes at which so many animals come, in order. */
export function arrivalMinutes(chance: Chance, count: number, rates: ArrivalRates): number[] {
  const minutes = Array.from({ length: count }, () => minuteOfShare(rates, chance.share()))
  return minutes.toSorted((a, b) => a - b)
}
