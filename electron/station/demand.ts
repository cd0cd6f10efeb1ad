/**
 * How many will come or be needed, as a distribution. A rate known well gives Poisson counts; a rate
 * believed to be gamma gives negative binomial ones. Source: Gelman et al., "Bayesian Data Analysis",
 * 3rd edition, section 2.6.
 */
import negativeBinomialCdf from '@stdlib/stats-base-dists-negative-binomial-cdf'
import negativeBinomialQuantile from '@stdlib/stats-base-dists-negative-binomial-quantile'
import poissonCdf from '@stdlib/stats-base-dists-poisson-cdf'
import poissonQuantile from '@stdlib/stats-base-dists-poisson-quantile'

/** Counts with this mean; `shape` of the gamma belief about the rate, `Infinity` for a known rate. */
export interface Demand {
  readonly mean: number
  readonly shape: number
}

/** The negative binomial's chance of success, as the library asks for it. */
const success = ({ mean, shape }: Demand) => shape / (shape + mean)

/** Beyond this shape the two distributions are one to within rounding. */
const knownShape = 1e6

/** Chance that at most so many are needed. */
export function chanceAtMost(demand: Demand, count: number): number {
  if (count < 0) return 0
  if (demand.mean === 0) return 1
  if (demand.shape > knownShape) return poissonCdf(count, demand.mean)
  return negativeBinomialCdf(count, demand.shape, success(demand))
}

/**
 * The smallest stock that suffices with at least this chance: the newsvendor's rule, with the service
 * level in place of the ratio of costs. Source: Stevenson, "Operations Management", 14th edition,
 * chapter 12, single-period model.
 */
export function stockFor(demand: Demand, chance: number): number {
  if (demand.mean === 0) return 0
  if (demand.shape > knownShape) return poissonQuantile(chance, demand.mean)
  return negativeBinomialQuantile(chance, demand.shape, success(demand))
}

/** The service level at which stock costs least: cost of one short against cost of one too many. */
export function serviceLevel(shortCost: number, excessCost: number): number {
  return shortCost / (shortCost + excessCost)
}

/** The part of a demand that falls to a share of the time, the people or the animals. */
export function shareOf({ mean, shape }: Demand, share: number): Demand {
  return { mean: mean * share, shape }
}
