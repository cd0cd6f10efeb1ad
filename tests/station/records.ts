/** Things of an invented station as the log would know them, for the rules to decide about. */
import { expect } from 'vitest'
import type { AnimalRecord } from '../../shared-types/animal.ts'
import type { CoolerRecord } from '../../shared-types/cooler.ts'
import type { EntryDraft } from '../../shared-types/entry.ts'
import { entryBodies } from '../../shared-types/entry.ts'
import type { KitRecord } from '../../shared-types/kit.ts'
import type { LocalDate } from '../../shared-types/local-date.ts'
import type { PersonRecord, Role } from '../../shared-types/person.ts'
import type { Refusal, Result } from '../../shared-types/result.ts'
import {
  animalNumber,
  bagNumber,
  coolerNumber,
  DeskId,
  kitNumber,
  personId,
} from '../../shared-types/sample-number.ts'
import type { DayRecord } from '../../shared-types/station.ts'
import type { BagRecord, TissueRecord } from '../../shared-types/tissue.ts'
import { factsOf } from '../support/station.ts'

export const desk = DeskId.parse('26KRVA')
export const date = (text: string) => text as LocalDate

/** Half past six of an opening morning at the station. */
export const morning = Date.parse('2026-11-14T06:30:00-07:00')
export const minutes = (count: number) => count * 60_000

export function person(role: Role, serial = 1, changed: Partial<PersonRecord> = {}): PersonRecord {
  return {
    person: personId(desk, serial),
    name: { lead: 'Orla Vance', sampler: 'Ines Tarr', volunteer: 'Bo Quill', office: 'Una Bell' }[
      role
    ],
    role,
    training: role === 'lead' || role === 'sampler' ? ['deer', 'elk-and-moose'] : [],
    active: true,
    duty: 'on',
    ...changed,
  }
}

export const lead = person('lead', 1)
export const sampler = person('sampler', 2)
export const volunteer = person('volunteer', 3)
export const crew = [lead, sampler, volunteer]
export const nameOf = (number: string) =>
  crew.find((each) => each.person === number)?.name ?? number

export function animal(serial = 1, changed: Partial<AnimalRecord> = {}): AnimalRecord {
  return {
    animal: animalNumber(desk, serial),
    day: date('2026-11-14'),
    facts: factsOf(),
    contact: null,
    noSample: null,
    state: 'waiting',
    arrivedMs: morning,
    assignedMs: null,
    sampler: null,
    outcome: null,
    finishedMs: null,
    ...changed,
  }
}

/** An animal in the hands of the sampler. */
export function inHand(serial = 1, changed: Partial<AnimalRecord> = {}): AnimalRecord {
  return animal(serial, {
    state: 'with-sampler',
    sampler: sampler.person,
    assignedMs: morning,
    ...changed,
  })
}

export function kit(serial = 1, changed: Partial<KitRecord> = {}): KitRecord {
  return {
    kit: kitNumber(desk, serial),
    animal: null,
    state: 'reserved',
    sampler: null,
    numberedMs: morning,
    openedMs: null,
    ...changed,
  }
}

export function bag(serial = 1, changed: Partial<BagRecord> = {}): BagRecord {
  return {
    bag: bagNumber(desk, serial, 'L'),
    animal: animalNumber(desk, serial),
    kit: kitNumber(desk, serial),
    site: 'left',
    kept: 'fresh',
    sealedMs: morning,
    place: 'bench',
    cooler: null,
    ...changed,
  }
}

export function tissue(changed: Partial<TissueRecord> = {}): TissueRecord {
  return {
    site: 'left',
    seen: null,
    sizeMm: null,
    missed: null,
    missedWords: '',
    bag: null,
    ...changed,
  }
}

export function cooler(serial = 1, changed: Partial<CoolerRecord> = {}): CoolerRecord {
  return {
    cooler: coolerNumber(desk, serial),
    name: `North ${serial}`,
    keeping: 'chilled',
    capacity: null,
    state: 'open',
    seal: null,
    handoff: null,
    ...changed,
  }
}

export function day(changed: Partial<DayRecord> = {}): DayRecord {
  return {
    date: date('2026-11-14'),
    state: 'open',
    openedMs: morning,
    closedMs: null,
    closedBy: null,
    reopenedMs: null,
    ...changed,
  }
}

/** The facts a rule decided to write; each must be one that its kind's schema takes as it is. */
export function written(result: Result<readonly EntryDraft[]>): readonly EntryDraft[] {
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.refusal)}`)
  for (const { kind, body } of result.value) expect(entryBodies[kind].parse(body)).toEqual(body)
  return result.value
}

/** A refusal must say what is wrong and what to do next, each in a sentence. */
export function refusal(result: Result<unknown>): Refusal {
  if (result.ok) throw new Error(`granted: ${JSON.stringify(result.value)}`)
  const { say, next } = result.refusal
  for (const sentence of [say, next]) expect(sentence).toMatch(/^["A-Z0-9].*\.$/s)
  return result.refusal
}

export const code = (result: Result<unknown>) => refusal(result).code
