/** Animals by their result, each with its samples, whether its hunter was told, and how to reach them. */
import { contactOf } from '../../../db/kept-apart.ts'
import type { ReadableLog } from '../../../db/connection.ts'
import { animalOf } from '../../../db/read/animals.ts'
import {
  animalsWithResults,
  resultRulesOf,
  resultsOfAnimal,
  sampleResultsOf,
  siteWordsIn,
} from '../../../db/read/results.ts'
import { lastToldOf, lastToldWords } from '../../../db/read/told.ts'
import type { AnimalRecord, HarvestPlace } from '../../../shared-types/animal.ts'
import { ResultWord } from '../../../shared-types/laboratory-result.ts'
import { granted, type Result, refused } from '../../../shared-types/result.ts'
import type { AnimalNumber } from '../../../shared-types/sample-number.ts'
import type { Reach, ResultAnimalView } from '../../../shared-types/views/results.ts'
import { type AnimalResult, animalResult, isFinal } from '../../station/animal-result.ts'
import { isHeldBack } from '../../station/results/held-back.ts'
import type { QueryCall, QueryHandlers } from '../call.ts'
import { namesOf } from '../names.ts'
import { openRowsByAnimal } from './in-doubt.ts'

/** The result of every animal that has one. The rule is asked once for each set of words. */
export function resultOfEach(log: ReadableLog): Map<AnimalNumber, AnimalResult> {
  const { obex } = resultRulesOf(log)
  const known = new Map<string, AnimalResult>()
  const resultOf = (sites: string) => {
    const result = known.get(sites) ?? animalResult(siteWordsIn(sites), obex)
    known.set(sites, result)
    return result
  }
  return new Map(animalsWithResults(log).map(({ animal, sites }) => [animal, resultOf(sites)]))
}

/** Animals with a result that an open row in doubt holds back. */
export function heldBackIn(log: ReadableLog): ReadonlySet<AnimalNumber> {
  const results = resultOfEach(log)
  const held = [...openRowsByAnimal(log)].filter(([animal, rows]) => {
    const word = results.get(animal)?.word ?? null
    return word !== null && isHeldBack(word, rows)
  })
  return new Set(held.map(([animal]) => animal))
}

/**
 * Animals of each result, and those of a final one whose hunters can be told it now and were not: one that
 * a row in doubt holds back is not among them.
 */
export function wordTallies(log: ReadableLog) {
  const told = lastToldWords(log)
  const held = heldBackIn(log)
  const tally = new Map(ResultWord.options.map((word) => [word, { word, animals: 0, untold: 0 }]))
  for (const [animal, { word }] of resultOfEach(log)) {
    const each = word && tally.get(word)
    if (!each) continue
    each.animals += 1
    if (isFinal(word) && !held.has(animal) && told.get(animal) !== word) each.untold += 1
  }
  return [...tally.values()]
}

export interface WhichAnimals {
  readonly word: ResultWord
  readonly untoldOnly: boolean
}

/** The animals of one result, by number. */
export function animalsOf(log: ReadableLog, { word, untoldOnly }: WhichAnimals): AnimalNumber[] {
  const told = untoldOnly ? lastToldWords(log) : null
  return [...resultOfEach(log)]
    .filter(([animal, result]) => result.word === word && told?.get(animal) !== word)
    .map(([animal]) => animal)
    .toSorted()
}

/** Names and ways to reach people are for leads and the office. */
export function mayReach({ person }: QueryCall): boolean {
  return person?.role === 'lead' || person?.role === 'office'
}

export function notYours(): Result<never> {
  return refused(
    'role-may-not',
    'Names and ways to reach hunters are for leads and the office.',
    'Ask a lead or someone of the office to do it, with their own PIN.',
  )
}

export function reachOf(call: QueryCall, digest: string | null): Reach {
  if (digest === null) return { is: 'none-left' }
  if (!mayReach(call)) return { is: 'not-yours' }
  const sealed = contactOf(call.log, digest)
  if (sealed === null) return { is: 'erased' }
  const contact = call.reveal(sealed)
  return contact === null ? { is: 'locked' } : { is: 'here', ...contact }
}

/** The unit an animal was taken in; empty where it is not known. */
export function unitOf(place: HarvestPlace): string {
  return place.by === 'not-known' ? '' : place.unit
}

function toldOf(log: ReadableLog, animal: AnimalNumber, nameOf: (id: string) => string) {
  const told = lastToldOf(log, animal)
  if (told === null) return null
  const { word, how, on, words, by } = told
  return { word, how, on, words, by: by ? nameOf(by) : '' }
}

/** What many animals of one answer are shown with, looked up once. */
export interface Around {
  readonly nameOf: (id: string) => string
  readonly openRows: ReadonlyMap<AnimalNumber, number>
}

export function aroundOf(log: ReadableLog): Around {
  return { nameOf: namesOf(log), openRows: openRowsByAnimal(log) }
}

/** One animal with its result; null where the log does not know it or has no result of it. */
export function resultAnimal(
  call: QueryCall,
  number: AnimalNumber,
  { nameOf, openRows }: Around,
): ResultAnimalView | null {
  const { log } = call
  const animal = animalOf(log, number)
  const latest = sampleResultsOf(log, number)
  const samples = latest.map(({ hash: _hash, ...sample }) => sample)
  const { word, because } = animalResult(samples, resultRulesOf(log).obex)
  if (animal === null || word === null) return null
  const told = toldOf(log, number, nameOf)
  return {
    ...plainFacts(animal),
    word,
    because,
    samples,
    earlier: earlierOf(log, number, latest),
    told,
    heldBack: isHeldBack(word, openRows.get(number) ?? 0),
    changedSinceTold: told !== null && told.word !== word,
    reach: reachOf(call, animal.contact),
  }
}

/** Results that were reported before the latest ones. */
function earlierOf(log: ReadableLog, animal: AnimalNumber, latest: readonly { hash: string }[]) {
  const now = new Set(latest.map(({ hash }) => hash))
  return resultsOfAnimal(log, animal)
    .filter(({ hash }) => !now.has(hash))
    .map(({ bag, word, method, tested, laboratory, ms }) => ({
      bag,
      word,
      method,
      tested,
      laboratory,
      ms,
    }))
}

function plainFacts({ animal, facts }: AnimalRecord) {
  const { hunter, tag, species, harvested, place } = facts
  return { animal, hunter, tag, species, harvested, unit: unitOf(place) }
}

const mostListed = 100

export const resultAnimalQueries = {
  'results.animals': (call, { from, ...which }) => {
    const all = animalsOf(call.log, which)
    const around = aroundOf(call.log)
    const held = heldBackIn(call.log)
    const heldBack = all.filter((animal) => held.has(animal)).length
    const animals = all
      .slice(from, from + mostListed)
      .flatMap((animal) => resultAnimal(call, animal, around) ?? [])
    return granted({ all: all.length, heldBack, animals })
  },
} satisfies Partial<QueryHandlers>
