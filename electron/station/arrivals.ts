/**
 * Arrivals over the day: the day's profile times a number for the day that is believed to be gamma,
 * updated by the counts so far (conjugate to Poisson: Gelman et al., "Bayesian Data Analysis", 3rd
 * edition, section 2.6). What is still to come is then negative binomial.
 */
import type { LineSettings } from '../../shared-types/line.ts'
import type { Demand } from './demand.ts'

/** Minutes since local midnight of a time of day such as `06:30`. */
export function minuteOfDay(time: string): number {
  return Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5))
}

/** The profile as a rising share of the day's animals, from 0 at opening to 1 at close. */
export interface DayProfile {
  /** Minutes of the day at which a stretch begins, and the close. */
  readonly edges: readonly number[]
  /** Share of the day's animals that has come by each edge. */
  readonly shares: readonly number[]
}

export function dayProfile({ profile, opens, closes }: LineSettings): DayProfile {
  const [open, close] = [minuteOfDay(opens), minuteOfDay(closes)]
  const stretches = profile
    .map(({ from, weight }) => ({ from: minuteOfDay(from), weight }))
    .filter(({ from }) => from < close)
    .toSorted((a, b) => a.from - b.from)
  const edges = [Math.min(open, stretches[0]?.from ?? open)]
  const weights = [0]
  stretches.forEach(({ from, weight }, place) => {
    const to = stretches[place + 1]?.from ?? close
    if (from > (edges.at(-1) ?? 0)) {
      edges.push(from)
      weights.push(weights.at(-1) ?? 0)
    }
    edges.push(to)
    weights.push((weights.at(-1) ?? 0) + weight)
  })
  const total = weights.at(-1) ?? 0
  // A profile of zeros says nothing, so arrivals are taken as even.
  if (total === 0) return { edges: [open, Math.max(close, open + 1)], shares: [0, 1] }
  return { edges, shares: weights.map((weight) => weight / total) }
}

/** The share of the day's animals that has come by a minute of the day. */
export function shareBy({ edges, shares }: DayProfile, minute: number): number {
  return interpolate(edges, shares, minute)
}

/** The minute of the day by which a share has come. */
export function minuteOf({ edges, shares }: DayProfile, share: number): number {
  return interpolate(shares, edges, share)
}

function interpolate(xs: readonly number[], ys: readonly number[], x: number): number {
  let after = 0
  while (after < xs.length && (xs[after] ?? 0) <= x) after += 1
  if (after === 0) return ys[0] ?? 0
  if (after === xs.length) return ys.at(-1) ?? 0
  const [x0, x1] = [xs[after - 1] ?? 0, xs[after] ?? 0]
  const [y0, y1] = [ys[after - 1] ?? 0, ys[after] ?? 0]
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0)
}

/** What is believed of the number of animals of the whole day. */
export interface DayBelief {
  readonly shape: number
  /** Animals of the day that the belief rests on, in days: the prior's plus the share seen. */
  readonly rate: number
}

/** From the settings alone; a number known well is one that no count will change. */
export function priorOfDay({ expectedAnimals, expectedSpread }: LineSettings): DayBelief {
  const shape = 1 / Math.max(expectedSpread, 1e-4) ** 2
  return { shape, rate: shape / expectedAnimals }
}

/** After `come` animals in the `share` of the day that has passed. */
export function learnDay({ shape, rate }: DayBelief, come: number, share: number): DayBelief {
  return { shape: shape + come, rate: rate + share }
}

/** Arrivals in a share of the day still ahead. */
export function stillToCome({ shape, rate }: DayBelief, share: number): Demand {
  return { mean: (shape / rate) * share, shape }
}
