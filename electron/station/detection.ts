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

/** What samples of one herd prove: worked out once, asked as often as one likes. */
export interface Survey {
  readonly method: Method
  /**
   * The probability of detection with so many animals tested; `RangeError` for more than the herd has.
   */
  readonly probability: (tested: number) => number
  /**
   * The smallest number of animals tested that detects with at least this confidence; null where even
   * testing the whole herd would not, because the test misses some.
   */
  readonly needed: (confidence: number) => number | null
}

/**
 * The survey of a herd.
 *
 * A known herd: exact, by the hypergeometric distribution with an imperfect test,
 * 1 - sum over x of P(x infected among those tested) * (1 - sensitivity)^x
 * (Cameron & Baldock, Preventive Veterinary Medicine 34:1-17, 1998, for a test without false alarms).
 * A herd without end: binomial, 1 - (1 - prevalence * sensitivity)^tested.
 *
 * `RangeError` for a design out of range.
 */
export function surveyOf(herd: Herd, design: Design): Survey {
  checkDesign(design)
  return herd === null || methodFor(herd) === 'binomial'
    ? surveyWithoutEnd(design)
    : surveyOfHerd(finiteHerd(herd, design))
}

/** `surveyOf` for a single question. */
export function probabilityOfDetection(tested: number, herd: Herd, design: Design): number {
  return surveyOf(herd, design).probability(tested)
}

/** `surveyOf` for a single question. */
export function neededFor(confidence: number, herd: Herd, design: Design): number | null {
  return surveyOf(herd, design).needed(confidence)
}

function surveyOfHerd(herd: FiniteHerd): Survey {
  const probability = (tested: number) => 1 - missIn(herd, checkedCount(tested))
  return {
    method: 'hypergeometric',
    probability,
    needed: (confidence) => smallest(herd.size, (tested) => probability(tested) >= confidence),
  }
}

/** The smallest number up to `most` that is enough; null where `most` is not. More is never worse. */
function smallest(most: number, isEnough: (count: number) => boolean): number | null {
  if (!isEnough(most)) return null
  let [low, high] = [-1, most]
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (isEnough(middle)) high = middle
    else low = middle
  }
  return high
}

function surveyWithoutEnd(design: Design): Survey {
  const perAnimal = design.prevalence * design.sensitivity
  const probability = (tested: number) => 1 - (1 - perAnimal) ** checkedCount(tested)
  return {
    method: 'binomial',
    probability,
    needed: (confidence) => neededWithoutEnd(confidence, perAnimal, probability),
  }
}

/** The logarithm gives the number but for rounding; the formula itself settles it. */
function neededWithoutEnd(
  confidence: number,
  perAnimal: number,
  probability: Survey['probability'],
): number | null {
  if (perAnimal === 1) return 1
  if (confidence >= 1) return null
  const near = Math.max(0, Math.ceil(Math.log(1 - confidence) / Math.log1p(-perAnimal)))
  const reaches = (tested: number) => tested >= 0 && probability(tested) >= confidence
  return [near - 1, near, near + 1].find(reaches) ?? null
}

interface FiniteHerd {
  readonly size: number
  /** By number k, the chance that k of the infected animals would show in the test if they were taken. */
  readonly showing: Float64Array
}

/**
 * Whether an infected animal would show does not depend on whether it is taken. So the number that
 * would show is binomial, and each such number is one plain hypergeometric: the same sum, with
 * terms that need no factorials.
 */
function finiteHerd(size: number, { prevalence, sensitivity }: Design): FiniteHerd {
  return { size, showing: binomialChances(infectedAtDesign(size, prevalence), sensitivity) }
}

/** The binomial from 0 to `of`: one value from the library, its neighbours by their ratio, outwards. */
function binomialChances(of: number, each: number): Float64Array {
  const chances = new Float64Array(of + 1)
  const mode = Math.min(of, Math.floor((of + 1) * each))
  chances[mode] = binomialPmf(mode, of, each)
  const odds = each / (1 - each)
  for (let up = mode; up < of; up += 1)
    chances[up + 1] = ((chances[up] ?? 0) * odds * (of - up)) / (up + 1)
  for (let down = mode; down > 0; down -= 1)
    chances[down - 1] = ((chances[down] ?? 0) * down) / (odds * (of - down + 1))
  return chances
}

/** The chance that none of those tested shows: (N-n)/N * (N-n-1)/(N-1) ..., one factor a showing animal. */
function missIn({ size, showing }: FiniteHerd, tested: number): number {
  if (tested > size) throw new RangeError(`${tested} tested of a herd of ${size}`)
  let [miss, noneTaken] = [0, 1]
  for (let count = 0; count < showing.length; count += 1) {
    miss += (showing[count] ?? 0) * noneTaken
    noneTaken *= Math.max(0, size - tested - count) / (size - count)
    // What is left is less than rounding.
    if (noneTaken < 1e-18) break
  }
  return Math.min(1, miss)
}

function checkedCount(tested: number): number {
  if (!Number.isInteger(tested) || tested < 0) throw new RangeError(`tested: ${tested}`)
  return tested
}

function checkDesign({ prevalence, sensitivity }: Design): void {
  for (const share of [prevalence, sensitivity])
    if (!(share > 0 && share <= 1)) throw new RangeError(`not a share over 0: ${share}`)
}
