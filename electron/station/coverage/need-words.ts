/** What a unit still needs, in the words of whoever stands at the window. */
import { type AgeClass, ageWords, speciesWords } from '../../../shared-types/animal.ts'
import type { CoveragePlan } from '../../../shared-types/coverage.ts'
import type { UnitCoverage } from '../../../shared-types/views/coverage.ts'

const agesWords: Record<AgeClass, { one: string; several: string }> = {
  young: { one: ageWords.young, several: ageWords.young },
  yearling: { one: 'yearling', several: 'yearlings' },
  adult: { one: 'adult', several: 'adults' },
}
const everyAge = Object.keys(agesWords).length

/** Who counts: "adults", "yearlings or adults", and "animals" where every age does. */
export function whoCounts(ages: readonly AgeClass[], count: number): string {
  if (ages.length === everyAge) return count === 1 ? 'animal' : 'animals'
  return ages.map((age) => agesWords[age][count === 1 ? 'one' : 'several']).join(' or ')
}

/** "This unit needs 14 more adults (mule deer)."; null where none of its species is short. */
export function unitNeed(herds: readonly UnitCoverage[], plan: CoveragePlan): string | null {
  const short = herds.flatMap(({ species, proof }) => {
    const more = proof?.moreToSample ?? 0
    return more === 0
      ? []
      : [`${more} more ${whoCounts(plan.ages, more)} (${speciesWords[species]})`]
  })
  return short.length === 0 ? null : `This unit needs ${short.join(', ')}.`
}
