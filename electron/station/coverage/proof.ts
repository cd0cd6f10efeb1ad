/** What the counts of one unit and species prove, by the office's design. */
import type { CoveragePlan, UnitNumbers } from '../../../shared-types/coverage.ts'
import type {
  ClassCoverage,
  CoverageCounts,
  CoverageState,
  UnitCoverage,
} from '../../../shared-types/views/coverage.ts'
import { type Herd, surveyOf } from '../detection.ts'
import { clopperPearson, exactUpperBound, wilson } from '../proportion.ts'
import { moreNeeded, pointsOf, type Weighted, weightedDetection } from '../weights.ts'

export type Proof = NonNullable<UnitCoverage['proof']>

/** The confidences that are always told, beside the programme's own. */
export const usualConfidences = [0.95, 0.99] as const

/**
 * The herd to count with. An estimate below the animals already tested or taken is wrong: until it is
 * put right the herd counts as without end, which never claims too much.
 */
export function herdOf(population: number | null, { usable, tested }: CoverageCounts): Herd {
  return population !== null && population >= Math.max(usable, tested) ? population : null
}

/**
 * The proof by a plan. `numbers`: null where the office knows nothing of this unit and species.
 * `isWeighted`: whether the office weights classes of this species.
 */
export function proofOf(
  counts: CoverageCounts,
  classes: readonly ClassCoverage[],
  plan: CoveragePlan,
  numbers: UnitNumbers | null,
  isWeighted: boolean,
): Proof {
  const { design } = plan
  const survey = surveyOf(herdOf(numbers?.population ?? null, counts), design)
  const confidences = [...new Set([...usualConfidences, design.confidence])].toSorted(
    (a, b) => a - b,
  )
  const needed = confidences.map((confidence) => {
    const total = survey.needed(confidence)
    return { confidence, total, more: lack(total, counts.tested) }
  })
  const wanted = needed.find(({ confidence }) => confidence === design.confidence)?.total ?? null
  const target = numbers?.goal ?? wanted
  return {
    method: survey.method,
    detection: survey.probability(counts.tested),
    detectionInHand: survey.probability(counts.usable),
    needed,
    target,
    moreToSample: lack(target, counts.usable),
    weighted: isWeighted ? weightedProof(classes, plan) : null,
  }
}

/** How many are lacking to a number; null where there is no such number. */
function lack(total: number | null, have: number): number | null {
  return total === null ? null : Math.max(0, total - have)
}

/** Classes without a weight count nothing. */
function weightedProof(classes: readonly ClassCoverage[], { design }: CoveragePlan) {
  const weighted: Weighted[] = classes.flatMap(({ tested, weight }) =>
    weight === null ? [] : [{ tested, weight }],
  )
  return {
    points: pointsOf(weighted),
    detection: weightedDetection(weighted, design),
    more: moreNeeded(weighted, 1, design.confidence, design),
  }
}

/** The share detected with both intervals; null before a detection. */
export function prevalenceOf({ detected, tested }: CoverageCounts): UnitCoverage['prevalence'] {
  if (detected === 0) return null
  return {
    share: detected / tested,
    wilson: wilson(detected, tested),
    exact: clopperPearson(detected, tested),
  }
}

/** The one-sided 95% bound where animals were tested and none detected. */
export function atMostOf({ detected, tested }: CoverageCounts): number | null {
  return detected > 0 || tested === 0 ? null : exactUpperBound(0, tested)
}

/** How a unit stands: a detection first, then whether the programme's confidence is reached. */
export function stateOf(
  counts: CoverageCounts,
  proof: Proof | null,
  plan: CoveragePlan | null,
): CoverageState {
  if (counts.detected > 0) return 'detected'
  if (proof === null || plan === null) return 'no-plan'
  const { detection, weighted, moreToSample } = proof
  if ((weighted?.detection ?? detection) >= plan.design.confidence) return 'reached'
  if (counts.usable === 0) return 'nothing-tested'
  return moreToSample === 0 ? 'waiting-for-results' : 'short'
}
