/**
 * What a share of a sample says about the share in all: intervals for a binomial proportion.
 * Both are two-sided; a claim of "no more than" wants the one-sided bound.
 */
import betaQuantile from '@stdlib/stats-base-dists-beta-quantile'
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'

/** The ends of an interval, as shares from 0 to 1. */
export interface Interval {
  readonly low: number
  readonly high: number
}

/** All that a sample of nothing says. */
const anything: Interval = { low: 0, high: 1 }

/**
 * Wilson's score interval for `count` of `of` (whole numbers, 0 <= count <= of, else a `RangeError`),
 * without continuity correction: the one whose cover is nearest to what it promises.
 * Source: Wilson EB, "Probable inference, the law of succession, and statistical inference", J Am Stat
 * Assoc 22:209-212, 1927; method 3 of Newcombe RG, Statistics in Medicine 17:857-872, 1998.
 */
export function wilson(count: number, of: number, confidence = 0.95): Interval {
  checkCount(count, of)
  if (of === 0) return anything
  const z = normalQuantile(1 - (1 - confidence) / 2, 0, 1)
  const share = count / of
  const width = 1 + z ** 2 / of
  const middle = (share + z ** 2 / (2 * of)) / width
  const half = (z / width) * Math.sqrt((share * (1 - share)) / of + z ** 2 / (4 * of ** 2))
  return {
    low: count === 0 ? 0 : Math.max(0, middle - half),
    high: count === of ? 1 : Math.min(1, middle + half),
  }
}

/**
 * The exact interval for `count` of `of` (whole numbers, 0 <= count <= of, else a `RangeError`): it
 * covers at least as often as promised, and is therefore wide.
 * Source: Clopper CJ, Pearson ES, Biometrika 26:404-413, 1934, by quantiles of the beta distribution;
 * method 5 of Newcombe RG, Statistics in Medicine 17:857-872, 1998.
 */
export function clopperPearson(count: number, of: number, confidence = 0.95): Interval {
  checkCount(count, of)
  const tail = (1 - confidence) / 2
  return {
    low: count === 0 ? 0 : betaQuantile(tail, count, of - count + 1),
    high: exactUpperBound(count, of, 1 - tail),
  }
}

/**
 * The one-sided exact bound: with this confidence the share in all is no more than it. This is the
 * bound for "below 1 in 100"; the two-sided interval would claim less than was seen.
 */
export function exactUpperBound(count: number, of: number, confidence = 0.95): number {
  checkCount(count, of)
  return count === of ? 1 : betaQuantile(confidence, count + 1, of - count)
}

function checkCount(count: number, of: number): void {
  if (!(Number.isInteger(count) && Number.isInteger(of) && count >= 0 && count <= of))
    throw new RangeError(`no share: ${count} of ${of}`)
}
