/** The bench: kits opened, tissue judged, bags sealed. */
import type { ReadableLog } from '../../db/connection.ts'
import { animalOf, animalsInHandsOf } from '../../db/read/animals.ts'
import { tissuesOf } from '../../db/read/bags.ts'
import { kitBalance, kitsOfAnimal } from '../../db/read/kits.ts'
import { personOf } from '../../db/read/people.ts'
import { kitAccountKey } from '../../shared-types/kit.ts'
import type { PersonRecord } from '../../shared-types/person.ts'
import { granted, type Result } from '../../shared-types/result.ts'
import { decideDiscardBag, decideSealBag } from '../station/bag.ts'
import { trainingLacked } from '../station/training.ts'
import { scanBag } from '../station/scan.ts'
import { latestDay } from '../../db/read/station.ts'
import { checkDayOpen } from '../station/day.ts'
import {
  type BenchRecord,
  checkAdvice,
  decideCheckTissue,
  decideMissTissue,
  decideOpenKit,
  isBaggable,
} from '../station/tissue.ts'
import { animalView } from './animals.ts'
import type { CommandHandlers, QueryHandlers } from './call.ts'
import { decided, done } from './decided.ts'
import { findAnimal, findBag, findPerson } from './find.ts'
import { copiesHere, draftsOfBringing, kitToOpen } from './guest-kit.ts'
import { waitingInTurn } from './line-facts.ts'

/** An animal with the kit opened on it and what is known of its tissue. */
export function benchRecord(log: ReadableLog, text: string, by: PersonRecord): Result<BenchRecord> {
  const animal = findAnimal(log, text)
  if (!animal.ok) return animal
  const kits = kitsOfAnimal(log, animal.value.animal)
  return granted({
    animal: animal.value,
    kit: kits.find(({ state }) => state === 'opened') ?? null,
    tissues: tissuesOf(log, animal.value.animal),
    by,
  })
}

const nextShown = 5

export const benchQueries = {
  bench: (call, { sampler: text }) => {
    const { log } = call
    const found = findPerson(log, text)
    if (!found.ok) return found
    const sampler = found.value
    const account = kitAccountKey({ in: 'hands', person: sampler.person })
    return granted({
      sampler: sampler.person,
      kitsInHand: kitBalance(log, account),
      animals: animalsInHandsOf(log, sampler.person).map((animal) => animalView(call, animal)),
      nextInLine: waitingInTurn(log, call.station, call.now)
        .filter(({ facts }) => trainingLacked(sampler, facts).length === 0)
        .slice(0, nextShown)
        .map(({ animal }) => animal),
    })
  },
} satisfies Partial<QueryHandlers>

export const benchCommands = {
  'kit.open': ({ act, by, now }, { animal: animalText, kit: kitText }) =>
    act((tx) => {
      const day = checkDayOpen(latestDay(tx))
      if (!day.ok) return day
      const bench = benchRecord(tx, animalText, by)
      if (!bench.ok) return bench
      const found = kitToOpen(tx, kitText, now)
      if (!found.ok) return found
      const { kit, brought } = found.value
      const { sampler } = bench.value.animal
      const inHand = sampler ? kitBalance(tx, kitAccountKey({ in: 'hands', person: sampler })) : 0
      const name = (sampler && personOf(tx, sampler)?.name) ?? 'the sampler'
      const opened = decideOpenKit(bench.value, kit, brought ? inHand + 1 : inHand, name)
      if (!opened.ok) return opened
      const bringing = brought && sampler ? draftsOfBringing(kit.kit, sampler) : []
      return granted({ drafts: [...bringing, ...opened.value], value: { kit: kit.kit } })
    }),
  'tissue.check': ({ act, by, station }, { animal, site, check, sizeMm }) =>
    act((tx) => {
      const bench = benchRecord(tx, animal, by)
      if (!bench.ok) return bench
      const drafts = decideCheckTissue(bench.value, station.settings, { site, check, sizeMm })
      return decided(drafts, { good: isBaggable(site, check), advice: checkAdvice(site, check) })
    }),
  'tissue.miss': ({ act, by, station }, { animal, site, reason, words }) =>
    act((tx) => {
      const bench = benchRecord(tx, animal, by)
      if (!bench.ok) return bench
      return done(decideMissTissue(bench.value, station.settings, { site, reason, words }))
    }),
  'bag.seal': ({ act, by, station }, { animal, site, bag: text }) =>
    act((tx) => {
      const bench = benchRecord(tx, animal, by)
      if (!bench.ok) return bench
      const bag = scanBag(tx.desk, text)
      if (!bag.ok) return bag
      const seal = { site, bag: bag.value, copies: copiesHere(tx, bag.value) }
      return done(decideSealBag(bench.value, station.settings, seal))
    }),
  'bag.discard': ({ act }, { bag: text, reason }) =>
    act((tx) => {
      const bag = findBag(tx, text)
      if (!bag.ok) return bag
      const animal = animalOf(tx, bag.value.animal)
      if (!animal) throw new Error(`bag ${bag.value.bag} is of no animal`)
      const tissues = tissuesOf(tx, animal.animal)
      const copies = copiesHere(tx, bag.value.bag)
      return done(decideDiscardBag({ bag: bag.value, animal, tissues, copies }, reason))
    }),
} satisfies Partial<CommandHandlers>
