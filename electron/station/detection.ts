/**
 * Whether a disease would have been found, had it been there: the probability that at least one of the
 * animals tested shows it, if it is in at least a given share of the herd (the design prevalence).
 *
 * Every formula here takes the animals tested for a random sample of the herd, and a test that never
 * shows disease where there is none. Animals that hunters bring are no random sample, and disease
 * comes in clusters: Diefenbach, Rosenberry & Boyd, Wildlife Society Bulletin 32:267-272, 2004, found
 * far less chance of detection than these formulas give. Whoever shows a figure must say so.
 */
import binomialPmf from '@stdlib/stats-base-dists-binomial-pmf'

/** What the sampling is meant to find. */
export interface Design {
  /** The share of infected animals from which on the disease should be found: over 0, at most 1. */
  readonly prevalence: number
  /** The chance that the test shows an infected animal: over 0, at most 1. */
  readonly sensitivity: number
}

/** Animals in the herd; null where nobody knows, or where it is too many to matter. */
export type Herd = number | null

/**
 * Above this a herd is counted as without end. The binomial gives a little less than the exact
 * figure, so it never claims too much.
 */
export const largeHerd = 20_000

export type Method = 'hypergeometric' | 'binomial'

/** Which formula serves a herd. */
export function methodFor(herd: Herd): Method {
  return herd === null || herd > largeHerd ? 'binomial' : 'hypergeometric'
}

/**
 * The fewest infected animals that make the design prevalence in a herd: rounded up, and never
 * none. The margin keeps 7 of 100 at 7%, which floating point takes for a little more than 7.
 */
export function infectedAtDesign(herd: number, prevalence: number): number {
  return Math.min(herd, Math.max(1, Math.ceil(herd * prevalence - 1e-9)))
}

/**
 * The probability of detection with `tested` animals.
 *
 * A known herd: exact, by the hypergeometric distribution with an imperfect test,
 * 1 - sum over x of P(x infected among those tested) * (1 - sensitivity)^x
 * (Cameron & Baldock, Preventive Veterinary Medicine 34:1-17, 1998, for a test without false alarms).
 * A herd without end: binomial, 1 - (1 - prevalence * sensitivity)^tested.
 *
 * `RangeError` for more animals tested than the herd has, or numbers out of range.
 */
export function probabilityOfDetection(tested: number, herd: Herd, design: Design): number {
  checkDesign(design)
  if (!Number.isInteger(tested) || tested < 0) throw new RangeError(`tested: ${tested}`)
  if (herd === null || methodFor(herd) === 'binomial')
    return 1 - (1 - design.prevalence * design.sensitivity) ** tested
  return 1 - missIn(finiteHerd(herd, design), tested)
}

/**
 * The smallest number of animals tested that detects with at least this confidence; null where even
 * testing the whole herd would not, because the test misses some.
 */
export function neededFor(confidence: number, herd: Herd, design: Design): number | null {
  checkDesign(design)
  if (herd === null || methodFor(herd) === 'binomial') return neededWithoutEnd(confidence, design)
  const finite = finiteHerd(herd, design)
  const reaches = (tested: number) => 1 - missIn(finite, tested) >= confidence
  if (!reaches(herd)) return null
  let [low, high] = [-1, herd]
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (reaches(middle)) high = middle
    else low = middle
  }
  return high
}

/** The logarithm gives the number but for rounding; the formula itself settles it. */
function neededWithoutEnd(confidence: number, design: Design): number | null {
  const reaches = (tested: number) => probabilityOfDetection(tested, null, design) >= confidence
  const perAnimal = design.prevalence * design.sensitivity
  if (perAnimal === 1) return 1
  if (confidence >= 1) return null
  const near = Math.max(0, Math.ceil(Math.log(1 - confidence) / Math.log1p(-perAnimal)))
  return [near - 1, near, near + 1].find((tested) => tested >= 0 && reaches(tested)) ?? null
}

interface FiniteHerd {
  readonly size: number
  /** By number k, the chance that k of the infected animals would show in the test if they were taken. */
  readonly showing: readonly number[]
}

/**
 * Whether an infected animal would show does not depend on whether it is taken. So the number that
 * would show is binomial, and each such number is one plain hypergeometric: the same sum, with
 * terms that need no factorials.
 */
function finiteHerd(size: number, { prevalence, sensitivity }: Design): FiniteHerd {
  const infected = infectedAtDesign(size, prevalence)
  const showing = Array.from({ length: infected + 1 }, (_, count) =>
    binomialPmf(count, infected, sensitivity),
  )
  return { size, showing }
}

/** The chance that none of those tested shows: (N-n)/N * (N-n-1)/(N-1) ..., one factor a showing animal. */
function missIn({ size, showing }: FiniteHerd, tested: number): number {
  if (tested > size) throw new RangeError(`${tested} tested of a herd of ${size}`)
  let [miss, noneTaken] = [0, 1]
  for (const [count, chance] of showing.entries()) {
    miss += chance * noneTaken
    noneTaken *= Math.max(0, size - tested - count) / (size - count)
    if (noneTaken === 0) break
  }
  return Math.min(1, miss)
}

function checkDesign({ prevalence, sensitivity }: Design): void {
  for (const share of [prevalence, sensitivity])
    if (!(share > 0 && share <= 1)) throw new RangeError(`not a share over 0: ${share}`)
}
