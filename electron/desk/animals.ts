/** Animals: check-in, corrections, and moving them along the line. */
import { contactOf, keepContact, type SealedContact } from '../../db/kept-apart.ts'
import type { ReadableLog } from '../../db/connection.ts'
import type { LogTransaction } from '../../db/log/append.ts'
import { animalsOfTag } from '../../db/read/animals.ts'
import { bagOf, tissuesOf } from '../../db/read/bags.ts'
import { kitsOfAnimal } from '../../db/read/kits.ts'
import { nextSerial } from '../../db/read/serials.ts'
import { latestDay } from '../../db/read/station.ts'
import type { AnimalFacts, AnimalRecord, Contact } from '../../shared-types/animal.ts'
import type { LocalDate } from '../../shared-types/local-date.ts'
import type { KitRecord } from '../../shared-types/kit.ts'
import { granted, type Result } from '../../shared-types/result.ts'
import {
  animalNumber,
  bagNumber,
  type KitNumber,
  lastSerial,
  numberParts,
} from '../../shared-types/sample-number.ts'
import type { StationRecord } from '../../shared-types/station.ts'
import { sitePart } from '../../shared-types/tissue.ts'
import type { AnimalView, SiteView } from '../../shared-types/views/animal.ts'
import {
  checkInWarnings,
  type CheckInView,
  decideAmend,
  decideCheckIn,
  noSampleReason,
  placeUsable,
} from '../station/check-in.ts'
import { checkDayOpen } from '../station/day.ts'
import { decideAssign, decideLeave, decidePutBack } from '../station/line.ts'
import { localDate } from '../station/local-time.ts'
import { decideFinish } from '../station/tissue.ts'
import { benchRecord } from './bench.ts'
import type { CommandCall, CommandHandlers, QueryCall, QueryHandlers } from './call.ts'
import { decided, done } from './decided.ts'
import { findAnimal, findPerson } from './find.ts'
import { overridden } from './forecast.ts'
import { kitLabelsHere } from './guest-kit.ts'
import { openKey, sealContact } from './kept/contacts.ts'
import { serialsExhausted } from './refusals.ts'
import { storyOf } from './story.ts'

/** The kit opened on an animal; before that, the one whose labels were printed for it. */
export function kitAt(kits: readonly KitRecord[]): KitRecord | null {
  return (
    kits.find(({ state }) => state === 'opened') ??
    kits.findLast(({ state }) => state === 'reserved') ??
    null
  )
}

/** Bags of an animal that are sealed and not discarded. */
function sealedBags(log: ReadableLog, { animal }: AnimalRecord): number {
  return tissuesOf(log, animal).filter(({ bag }) => bag !== null).length
}

function siteViews(
  log: ReadableLog,
  station: StationRecord,
  animal: AnimalRecord,
  openedKit: KitNumber | null,
): SiteView[] {
  const tissues = tissuesOf(log, animal.animal)
  return station.settings.tissues.map(({ site, kept }) => {
    const tissue = tissues.find((each) => each.site === site)
    const bag = tissue?.bag ? bagOf(log, tissue.bag) : null
    const kit = openedKit && numberParts(openedKit)
    return {
      site,
      kept: bag?.kept ?? kept,
      check: tissue?.seen ?? null,
      sizeMm: tissue?.sizeMm ?? null,
      missed: tissue?.missed ? { reason: tissue.missed, words: tissue.missedWords } : null,
      bag: bag?.bag ?? null,
      bagPlace: bag?.place ?? null,
      expectedBag: kit ? bagNumber(kit.desk, kit.serial, sitePart[site]) : null,
    }
  })
}

/** Everything of one animal. Samplers do not see how to reach the hunter: they need not know. */
export function animalView(call: QueryCall, animal: AnimalRecord): AnimalView {
  const { log, station, person } = call
  const kit = kitAt(kitsOfAnimal(log, animal.animal))
  const opened = kit?.state === 'opened'
  const maySeeContact = person !== null && person.role !== 'sampler'
  return {
    animal: animal.animal,
    facts: animal.facts,
    contact: maySeeContact ? revealed(call, animal.contact) : null,
    hasContact: animal.contact !== null,
    state: animal.state,
    noSample: animal.noSample,
    outcome: animal.outcome,
    sampler: animal.sampler,
    kit: kit?.kit ?? null,
    kitOpened: opened,
    arrivedMs: animal.arrivedMs,
    placeUsable: placeUsable(station.settings, animal.facts),
    sites: siteViews(log, station, animal, opened ? kit.kit : null),
    story: storyOf(log, animal.animal),
  }
}

function revealed({ log, reveal }: QueryCall, digest: string | null): Contact | null {
  const sealed = digest === null ? null : contactOf(log, digest)
  return sealed && reveal(sealed)
}

export const animalQueries = {
  animal: (call, { animal: text }) => {
    const animal = findAnimal(call.log, text)
    return animal.ok ? granted(animalView(call, animal.value)) : animal
  },
  tagSeen: ({ log }, { tag }) => {
    const [seen] = animalsOfTag(log, tag.trim().toUpperCase())
    if (!seen) return granted({ seen: null })
    const { animal, arrivedMs, state, facts } = seen
    return granted({ seen: { animal, arrivedMs, state, hunter: facts.hunter } })
  },
} satisfies Partial<QueryHandlers>

/** A contact sealed under the log's key; null when the hunter left nothing. */
function sealed(
  tx: LogTransaction,
  contact: Contact | null,
  { kept, deps }: CommandCall,
): Result<SealedContact | null> {
  if (!contact || Object.values(contact).every((each) => each === '')) return granted(null)
  const key = openKey(tx, kept.ring, deps.randomBytes)
  return key.ok ? granted(sealContact(contact, key.value, deps.randomBytes)) : key
}

function checkInView(
  log: ReadableLog,
  station: StationRecord,
  facts: AnimalFacts,
  at: { readonly now: number; readonly day: LocalDate },
): CheckInView {
  return {
    day: at.day,
    settings: station.settings,
    today: localDate(at.now, station.zone),
    tagHolder: animalsOfTag(log, facts.tag)[0] ?? null,
  }
}

export const animalCommands = {
  'animal.checkIn': (call, { facts, contact }) => {
    const { act, station, now } = call
    return act((tx) => {
      const day = checkDayOpen(latestDay(tx))
      if (!day.ok) return day
      const serial = nextSerial(tx, 'animal')
      if (serial > lastSerial) return serialsExhausted('animals')
      const animal = animalNumber(tx.desk, serial)
      const view = checkInView(tx, station, facts, { now, day: day.value.date })
      const kept = sealed(tx, contact, call)
      if (!kept.ok) return kept
      const drafts = decideCheckIn(view, animal, facts, kept.value?.digest ?? null)
      if (drafts.ok && kept.value) keepContact(tx, kept.value)
      return decided(drafts, {
        animal,
        noSample: noSampleReason(station.settings, facts),
        warnings: checkInWarnings(station.settings, facts),
      })
    })
  },
  'animal.amend': ({ act, station, now }, { animal: text, facts, reason }) =>
    act((tx) => {
      const animal = findAnimal(tx, text)
      if (!animal.ok) return animal
      const others = animalsOfTag(tx, facts.tag).filter(
        (each) => each.animal !== animal.value.animal,
      )
      const view = {
        ...checkInView(tx, station, facts, { now, day: animal.value.day }),
        tagHolder: others[0] ?? null,
      }
      return decided(decideAmend({ ...view, animal: animal.value }, facts, reason), {
        noSample: noSampleReason(station.settings, facts),
        warnings: checkInWarnings(station.settings, facts),
      })
    }),
  'animal.assign': (call, { animal: animalText, sampler: samplerText }) =>
    call.act((tx) => {
      const animal = findAnimal(tx, animalText)
      if (!animal.ok) return animal
      const sampler = findPerson(tx, samplerText)
      if (!sampler.ok) return sampler
      const assigned = { animal: animal.value, sampler: sampler.value, by: call.by }
      const drafts = decideAssign(assigned)
      return drafts.ok
        ? done(granted([...overridden(tx, call, assigned), ...drafts.value]))
        : drafts
    }),
  'animal.putBack': ({ act }, { animal: text, reason }) =>
    act((tx) => {
      const animal = findAnimal(tx, text)
      if (!animal.ok) return animal
      return done(decidePutBack(animal.value, sealedBags(tx, animal.value), reason))
    }),
  'animal.leave': ({ act }, { animal: text, reason }) =>
    act((tx) => {
      const animal = findAnimal(tx, text)
      if (!animal.ok) return animal
      return done(decideLeave(animal.value, sealedBags(tx, animal.value), reason))
    }),
  'animal.finish': ({ act, by, station }, { animal: text }) =>
    act((tx) => {
      const bench = benchRecord(tx, text, by)
      if (!bench.ok) return bench
      const { kit } = bench.value
      const finish = decideFinish(
        bench.value,
        station.settings,
        kit ? kitLabelsHere(tx, kit.kit, station.settings) : [],
      )
      if (!finish.ok) return finish
      const { drafts, outcome } = finish.value
      return granted({ drafts, value: { outcome } })
    }),
} satisfies Partial<CommandHandlers>
