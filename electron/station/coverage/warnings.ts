/** What must be looked after before the figures of a unit are believed, and what no figure says. */
import { ageWords } from '../../../shared-types/animal.ts'
import type { UnitNumbers } from '../../../shared-types/coverage.ts'
import type { ClassCoverage, CoverageCounts } from '../../../shared-types/views/coverage.ts'

export interface UnitFacts {
  readonly unit: string
  readonly isListed: boolean
  /** Of the ages that count. */
  readonly counts: CoverageCounts
  readonly classes: readonly ClassCoverage[]
  readonly numbers: UnitNumbers | null
  readonly isWeighted: boolean
}

export function unitWarnings(facts: UnitFacts): string[] {
  return [
    ...notListed(facts),
    ...herdTooSmall(facts),
    ...harvestTooSmall(facts),
    ...agesLeftOut(facts),
    ...weightsMissing(facts),
    ...notConfirmed(facts),
  ]
}

function notListed({ unit, isListed }: UnitFacts): string[] {
  return isListed
    ? []
    : [`Unit ${unit} is in no station's list: a slip of the keyboard makes a unit of its own.`]
}

function herdTooSmall({ counts, numbers }: UnitFacts): string[] {
  const population = numbers?.population ?? null
  const have = Math.max(counts.usable, counts.tested)
  return population === null || population >= have
    ? []
    : [
        `The estimate of ${population} animals is less than the ${have} sampled here: the herd counts as without end until the estimate is put right.`,
      ]
}

function harvestTooSmall({ counts, numbers }: UnitFacts): string[] {
  const harvested = numbers?.harvested ?? null
  return harvested === null || harvested >= counts.checked
    ? []
    : [`The office counts ${harvested} harvested, yet ${counts.checked} were checked in.`]
}

function agesLeftOut({ classes }: UnitFacts): string[] {
  const left = classes.filter(({ counts }) => !counts)
  const sampled = left.reduce((sum, each) => sum + each.sampled, 0)
  const ages = [...new Set(left.map(({ age }) => ageWords[age]))].join(' and ')
  return sampled === 0 ? [] : [`${sampled} sampled of an age that does not count (${ages}).`]
}

function weightsMissing({ classes, isWeighted }: UnitFacts): string[] {
  if (!isWeighted) return []
  const left = classes.filter(({ weight, tested }) => weight === null && tested > 0)
  const tested = left.reduce((sum, each) => sum + each.tested, 0)
  return tested === 0
    ? []
    : [`${tested} tested of a class that has no weight: they earn no points.`]
}

function notConfirmed({ counts }: UnitFacts): string[] {
  return counts.presumptive === 0
    ? []
    : [`${counts.presumptive} presumptive: wait for the second test before anything is concluded.`]
}

/**
 * What cannot be concluded. Clustering: Diefenbach, Rosenberry & Boyd, Wildlife Society Bulletin
 * 32:267-272, 2004. What hunters choose: common practice, no source.
 */
export const coverageLimits: readonly string[] = [
  'These animals are a convenience sample: hunters brought them. The formulas take them for a random sample of the herd, which they are not.',
  'Hunters choose where they hunt and what they shoot: roads, ages and sexes are not shot as they live. Whole corners of a unit may have no sample.',
  'Disease comes in clusters. With the same number of samples a cluster is missed far more often than these figures say (Diefenbach, Rosenberry & Boyd 2004).',
  '“Not detected” is never “free of disease”: it says how much could still be there, unseen.',
  'A share among animals tested is no share of the herd, and no share of what is eaten.',
  'The figures trust the numbers put in: herd estimate, test sensitivity and place of harvest.',
]
