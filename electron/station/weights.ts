/**
 * Weighted surveillance: an animal of a class in which disease is likelier says more when it is clear.
 * The weights are the programme's own: none is built in.
 *
 * A class of weight w is taken to have w times the prevalence of the reference class (weight 1), whose
 * prevalence is the design prevalence. Idea: Walsh (editor), "Enhanced surveillance strategies for
 * detecting and monitoring chronic wasting disease in free-ranging cervids", US Geological Survey
 * Open-File Report 2012-1036; Jennelle et al., Journal of Applied Ecology, 2018,
 * doi 10.1111/1365-2664.13178. The herd counts as without end.
 */
import type { Design } from './detection.ts'

/** Animals of one class that were tested, and what each of them counts. */
export interface Weighted {
  readonly tested: number
  /** Times the reference class: over 0. */
  readonly weight: number
}

/** The points earned: each animal tested counts its weight. */
export function pointsOf(classes: readonly Weighted[]): number {
  return classes.reduce((sum, { tested, weight }) => sum + tested * weight, 0)
}

/** The chance that one animal of a class shows: never more than the sensitivity. */
function showing(weight: number, { prevalence, sensitivity }: Design): number {
  return Math.min(1, weight * prevalence) * sensitivity
}

/** The probability of detection: 1 - product over classes of (1 - weight * prevalence * sensitivity)^tested. */
export function weightedDetection(classes: readonly Weighted[], design: Design): number {
  return 1 - weightedMiss(classes, design)
}

function weightedMiss(classes: readonly Weighted[], design: Design): number {
  return classes.reduce(
    (miss, { tested, weight }) => miss * (1 - showing(weight, design)) ** tested,
    1,
  )
}

/**
 * How many more animals of a class of this weight reach the confidence; null where none can, and 0
 * where it is reached.
 */
export function moreNeeded(
  classes: readonly Weighted[],
  weight: number,
  confidence: number,
  design: Design,
): number | null {
  const miss = weightedMiss(classes, design)
  const [allowed, stays] = [1 - confidence, 1 - showing(weight, design)]
  if (1 - miss >= confidence) return 0
  if (stays === 0) return 1
  if (stays === 1 || allowed <= 0) return null
  const near = Math.ceil((Math.log(allowed) - Math.log(miss)) / Math.log(stays))
  const reaches = (more: number) => 1 - miss * stays ** more >= confidence
  return [near - 1, near, near + 1].find((more) => more > 0 && reaches(more)) ?? null
}
