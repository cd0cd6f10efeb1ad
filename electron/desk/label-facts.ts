/** What the labels of a kit say of its animal, in plain words. */
import type { ReadableLog } from '../../db/connection.ts'
import { animalOf } from '../../db/read/animals.ts'
import { personOf } from '../../db/read/people.ts'
import {
  type AnimalFacts,
  ageWords,
  type HarvestPlace,
  type HeadCondition,
  headFaultWords,
  speciesWords,
} from '../../shared-types/animal.ts'
import type { AnimalNumber } from '../../shared-types/sample-number.ts'
import type { StationSettings } from '../../shared-types/station.ts'
import { type Kept, keptWords, siteWords, type TissueSite } from '../../shared-types/tissue.ts'
import type { DataCardFacts } from '../print/data-card.ts'

function placeWords(place: HarvestPlace): string {
  if (place.by === 'not-known') return 'not known'
  if (place.by === 'unit') return [`unit ${place.unit}`, place.place].filter(Boolean).join(', ')
  const at = `${place.latitude.toFixed(4)}, ${place.longitude.toFixed(4)}`
  return place.unit === '' ? at : `unit ${place.unit}, ${at}`
}

function headWords({ presented, faults }: HeadCondition): string {
  const state =
    faults.length === 0 ? 'whole' : faults.map((each) => headFaultWords[each]).join(', ')
  return presented === 'head-only' ? `head only, ${state}` : state
}

function cardFacts(
  animal: AnimalNumber,
  facts: AnimalFacts,
  kept: string,
  sampler: string | undefined,
): DataCardFacts {
  return {
    animal,
    tag: facts.tag,
    species: speciesWords[facts.species],
    sex: facts.sex,
    ageClass: ageWords[facts.age],
    harvestDate: facts.harvested,
    harvestPlace: placeWords(facts.place),
    headCondition: headWords(facts.head),
    kept,
    sampler,
  }
}

/** How each tissue is kept, by the settings. */
export function keptBySite(settings: StationSettings): Partial<Record<TissueSite, Kept>> {
  return Object.fromEntries(settings.tissues.map(({ site, kept }) => [site, kept]))
}

function keptInWords(settings: StationSettings): string {
  const ways = new Set(settings.tissues.map(({ kept }) => kept))
  const [only] = ways
  if (ways.size === 1 && only) return keptWords[only]
  return settings.tissues
    .map(({ site, kept }) => `${siteWords[site]} ${keptWords[kept]}`)
    .join(', ')
}

/** What is known of an animal; of a kit for whoever comes only how its tissue is kept. */
export function factsOf(
  log: ReadableLog,
  animal: AnimalNumber | null,
  settings: StationSettings,
): DataCardFacts {
  const kept = keptInWords(settings)
  const record = animal && animalOf(log, animal)
  if (!record) return { kept }
  const sampler = record.sampler ? personOf(log, record.sampler)?.name : undefined
  return cardFacts(record.animal, record.facts, kept, sampler)
}
