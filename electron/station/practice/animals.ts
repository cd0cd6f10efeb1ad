/** Invented animals and hunters: what a volunteer would hear and see at check-in. */
import type {
  AgeClass,
  AnimalFacts,
  Contact,
  HarvestPlace,
  HeadCondition,
  HeadFault,
  Species,
} from '../../../shared-types/animal.ts'
import type { LocalDate } from '../../../shared-types/local-date.ts'
import type { HarvestUnit } from '../../../shared-types/station.ts'
import { dealIncidents, type Incidents } from './incidents.ts'
import { inventedName } from './names.ts'
import type { Chance } from './random.ts'
import { practiceSettings } from './station-facts.ts'
import { type TissuePlan, tissuePlan } from './tissue-plan.ts'

/** An animal of a practice day before it is given a number. */
export interface AnimalPlan {
  readonly facts: AnimalFacts
  readonly contact: Contact | null
  readonly incidents: Incidents
  readonly tissues: readonly TissuePlan[]
}

const places = [
  'old mill road',
  'burnt fir slope',
  'second ford',
  'gravel pit north',
  'fence line east',
]

/** Open ocean: a square where nobody hunts and nobody lives. */
function coordinates(chance: Chance) {
  const degrees = (low: number) => Number(chance.between(low, low + 0.4).toFixed(4))
  return { latitude: degrees(45.2), longitude: degrees(-140.6) }
}

function placeOf(chance: Chance, unit: HarvestUnit, known: boolean): HarvestPlace {
  if (!known) return { by: 'not-known' }
  if (chance.happens(0.3)) return { by: 'coordinates', ...coordinates(chance), unit: unit.code }
  return { by: 'unit', unit: unit.code, place: chance.oneOf(places) }
}

function faultsOf(chance: Chance): HeadFault[] {
  const fault = chance.weighted<HeadFault | null>([
    [null, 76],
    ['skinned', 6],
    ['skull-plate-cut', 7],
    ['head-shot', 3],
    ['neck-shot', 4],
    ['frozen', 1],
    ['spoiled', 3],
  ])
  return fault ? [fault] : []
}

function headOf(chance: Chance): HeadCondition {
  const presented = chance.happens(0.55) ? 'carcass' : 'head-only'
  return { presented, faults: faultsOf(chance) }
}

function speciesOf(chance: Chance, incidents: Incidents): Species {
  if (incidents.has('species-not-taken')) return 'moose'
  return chance.weighted<Species>([
    ['white-tailed-deer', 52],
    ['mule-deer', 31],
    ['elk', 17],
  ])
}

function ageOf(chance: Chance, incidents: Incidents): AgeClass {
  if (incidents.has('young')) return 'young'
  return chance.happens(0.3) ? 'yearling' : 'adult'
}

interface Given {
  readonly tag: number
  readonly head: HeadCondition
  readonly harvested: LocalDate
  readonly incidents: Incidents
}

function factsOf(chance: Chance, { tag, head, harvested, incidents }: Given): AnimalFacts {
  const unit = chance.oneOf(practiceSettings.units)
  return {
    hunter: `H${chance.whole(100_000, 999_999)}`,
    // Steps through all seven-digit numbers, so no two animals share one and neighbours differ.
    tag: `T${String((4_127_903 + tag * 7_368_787) % 10_000_000).padStart(7, '0')}`,
    species: speciesOf(chance, incidents),
    sex: chance.weighted([
      ['male', 60],
      ['female', 38],
      ['unknown', 2],
    ]),
    age: ageOf(chance, incidents),
    harvested,
    place: placeOf(chance, unit, !incidents.has('place-not-known')),
    head,
    consent: incidents.has('consent-refused') ? 'refused' : 'given',
    programme: unit.mandatory ? 'mandatory' : 'voluntary',
  }
}

/** Numbers 555-0100 to 555-0199 belong to nobody (North American Numbering Plan); example.org is RFC 2606's. */
function contactOf(chance: Chance): Contact | null {
  if (chance.happens(0.2)) return null
  const name = inventedName(chance)
  const email = `${name.toLowerCase().replace(' ', '.')}@example.org`
  return { name, phone: `555-01${chance.whole(10, 99)}`, email: chance.happens(0.5) ? email : '' }
}

/** The animals of one desk's day in the order of their arrival; `tags` numbers their tags. */
export function inventedAnimals(
  chance: Chance,
  tags: readonly number[],
  harvested: LocalDate,
): AnimalPlan[] {
  const heads = tags.map(() => headOf(chance))
  const struck = dealIncidents(
    chance,
    heads.map(({ faults }) => faults.length === 0),
  )
  return heads.map((head, place): AnimalPlan => {
    const incidents = struck[place] ?? new Set()
    const facts = factsOf(chance, { tag: tags[place] ?? 0, head, harvested, incidents })
    const tissues = tissuePlan(chance, facts, incidents)
    return { facts, contact: contactOf(chance), incidents, tissues }
  })
}
