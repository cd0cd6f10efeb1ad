/** Animals counted by how far their samples have come. */
import type { ObexRule } from '../../../shared-types/laboratory-result.ts'
import type { TissueSite } from '../../../shared-types/tissue.ts'
import type { CoverageCounts } from '../../../shared-types/views/coverage.ts'
import type { ResultWord } from '../../../shared-types/laboratory-result.ts'
import { animalResult, isTested } from '../animal-result.ts'

/** Animals that are alike: the best tissue in their bags, and what was reported of them. */
export interface Alike {
  readonly tissue: 'none' | 'wrong' | 'right'
  readonly results: readonly { readonly site: TissueSite; readonly word: ResultWord }[]
  readonly animals: number
}

export const noCounts: CoverageCounts = {
  checked: 0,
  sampled: 0,
  usable: 0,
  tested: 0,
  presumptive: 0,
  detected: 0,
}

/** Each animal counts once in every stage it has reached. */
export function countsOf(alike: Alike, obex: ObexRule): CoverageCounts {
  const { word } = animalResult(alike.results, obex)
  const many = (is: boolean) => (is ? alike.animals : 0)
  const isSampled = alike.tissue !== 'none' || alike.results.length > 0
  const isUsable = isTested(word) || (alike.tissue === 'right' && word !== 'unsuitable')
  return {
    checked: alike.animals,
    sampled: many(isSampled),
    usable: many(isUsable),
    tested: many(isTested(word)),
    presumptive: many(word === 'presumptive'),
    detected: many(word === 'detected'),
  }
}

export function sumOf(counts: readonly CoverageCounts[]): CoverageCounts {
  return counts.reduce(
    (sum, each) => ({
      checked: sum.checked + each.checked,
      sampled: sum.sampled + each.sampled,
      usable: sum.usable + each.usable,
      tested: sum.tested + each.tested,
      presumptive: sum.presumptive + each.presumptive,
      detected: sum.detected + each.detected,
    }),
    noCounts,
  )
}
