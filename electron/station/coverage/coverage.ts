/** Coverage of every unit and species of a record. */
import type { AgeClass, Sex, Species } from '../../../shared-types/animal.ts'
import { classKey, type CoveragePlan, type UnitNumbers } from '../../../shared-types/coverage.ts'
import type { ObexRule } from '../../../shared-types/laboratory-result.ts'
import type { HarvestUnit } from '../../../shared-types/station.ts'
import type { ClassCoverage, UnitCoverage } from '../../../shared-types/views/coverage.ts'
import { type Alike, countsOf, sumOf } from './counts.ts'
import { atMostOf, prevalenceOf, proofOf, stateOf } from './proof.ts'
import { unitWarnings } from './warnings.ts'

/** Animals of one unit and class that are alike. */
export interface ClassedAnimals extends Alike {
  readonly unit: string | null
  readonly species: Species
  readonly sex: Sex
  readonly age: AgeClass
}

export interface CoverageFacts {
  readonly animals: readonly ClassedAnimals[]
  readonly plan: CoveragePlan | null
  readonly obex: ObexRule
  /** The units that stations of this record list. */
  readonly units: readonly HarvestUnit[]
}

const herdKey = (of: { unit: string; species: Species }) => `${of.unit} ${of.species}`

/** Coverage by unit, then species: where animals came from, and where the office set numbers. */
export function coverageOf(facts: CoverageFacts): UnitCoverage[] {
  const herds = new Map<string, ClassedAnimals[]>()
  for (const alike of facts.animals) {
    if (alike.unit === null) continue
    const key = herdKey({ unit: alike.unit, species: alike.species })
    const herd = herds.get(key)
    if (herd) herd.push(alike)
    else herds.set(key, [alike])
  }
  const numbers = new Map((facts.plan?.numbers ?? []).map((each) => [herdKey(each), each]))
  const named = new Map<string, { unit: string; species: Species }>()
  for (const { unit, species } of [...facts.animals, ...numbers.values()])
    if (unit !== null) named.set(herdKey({ unit, species }), { unit, species })
  return [...named]
    .toSorted(([, a], [, b]) => order(a.unit, b.unit) || order(a.species, b.species))
    .map(([key, of]) => herdCoverage(of, herds.get(key) ?? [], numbers.get(key) ?? null, facts))
}

/** Units in the order a person reads them: 2 before 10. */
const collator = new Intl.Collator('en', { numeric: true })
const order = (a: string, b: string) => collator.compare(a, b)

function herdCoverage(
  { unit, species }: { unit: string; species: Species },
  animals: readonly ClassedAnimals[],
  numbers: UnitNumbers | null,
  { plan, obex, units }: CoverageFacts,
): UnitCoverage {
  const classes = classesOf(animals, plan, obex)
  const counts = sumOf(classes.filter((each) => each.counts))
  const isWeighted = plan?.weights.some((each) => each.species === species) ?? false
  const proof = plan === null ? null : proofOf(counts, classes, plan, numbers, isWeighted)
  const listed = units.find(({ code }) => code === unit) ?? null
  return {
    unit,
    name: listed?.name ?? '',
    species,
    population: numbers?.population ?? null,
    harvested: numbers?.harvested ?? null,
    goal: numbers?.goal ?? null,
    counts,
    classes,
    state: stateOf(counts, proof, plan),
    proof,
    prevalence: prevalenceOf(counts),
    atMost: atMostOf(counts),
    warnings: unitWarnings({
      unit,
      isListed: listed !== null,
      counts,
      classes,
      numbers,
      isWeighted,
    }),
  }
}

const sexes: readonly Sex[] = ['male', 'female', 'unknown']
const ages: readonly AgeClass[] = ['adult', 'yearling', 'young']

/** The classes that have animals, adults first. Without a plan every age counts. */
function classesOf(
  animals: readonly ClassedAnimals[],
  plan: CoveragePlan | null,
  obex: ObexRule,
): ClassCoverage[] {
  const weights = new Map((plan?.weights ?? []).map((each) => [classKey(each), each.weight]))
  return ages.flatMap((age) =>
    sexes.flatMap((sex) => {
      const [first, ...rest] = animals.filter((each) => each.age === age && each.sex === sex)
      if (!first) return []
      const counts = sumOf([first, ...rest].map((each) => countsOf(each, obex)))
      const weight = weights.get(classKey(first)) ?? null
      return [{ ...counts, sex, age, counts: plan === null || plan.ages.includes(age), weight }]
    }),
  )
}
