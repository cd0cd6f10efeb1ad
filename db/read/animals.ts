/** Animals: by number, by tag, in the line, and those of a day. */
import type { AnimalRecord, HarvestPlace, HeadCondition } from '../../shared-types/animal.ts'
import type { LocalDate } from '../../shared-types/local-date.ts'
import type { AnimalNumber, PersonId } from '../../shared-types/sample-number.ts'
import type { ReadableLog } from '../connection.ts'
import type { AnimalTable } from '../read-tables.ts'
import { type Params, prepareAll, prepareOne } from '../statement.ts'

const animalRow = prepareOne((db, p: Params<{ animal: AnimalNumber }>) =>
  db.selectFrom('animal').selectAll().where('animal', '=', p('animal')),
)

export function animalOf(log: ReadableLog, animal: AnimalNumber): AnimalRecord | null {
  const row = animalRow(log, { animal })
  return row ? rowToAnimal(row) : null
}

const tagRows = prepareAll((db, p: Params<{ tag: string }>) =>
  db
    .selectFrom('animal')
    .selectAll()
    .where('tag', '=', p('tag'))
    .where('state', '<>', 'struck-out')
    .orderBy('arrived_ms'),
)

/** Every animal that carries a tag, but for check-ins taken back; more than one is a slip or a fraud. */
export function animalsOfTag(log: ReadableLog, tag: string): AnimalRecord[] {
  return tagRows(log, { tag }).map(rowToAnimal)
}

const lineRows = prepareAll((db) =>
  db
    .selectFrom('animal')
    .selectAll()
    .where('state', 'in', ['waiting', 'with-sampler'])
    .orderBy('arrived_ms')
    .orderBy('animal'),
)

/** Animals waiting or with a sampler, first come first. */
export function animalsInLine(log: ReadableLog): AnimalRecord[] {
  return lineRows(log).map(rowToAnimal)
}

const inHandRows = prepareAll((db, p: Params<{ sampler: PersonId }>) =>
  db
    .selectFrom('animal')
    .selectAll()
    .where('state', 'in', ['waiting', 'with-sampler'])
    .where('sampler', '=', p('sampler'))
    .orderBy('assigned_ms'),
)

/** The animals in one sampler's hands, the first assigned first. */
export function animalsInHandsOf(log: ReadableLog, sampler: PersonId): AnimalRecord[] {
  return inHandRows(log, { sampler }).map(rowToAnimal)
}

const everyRow = prepareAll((db) =>
  db.selectFrom('animal').selectAll().orderBy('arrived_ms').orderBy('animal'),
)

/** Every animal ever checked in, first come first. */
export function allAnimals(log: ReadableLog): AnimalRecord[] {
  return everyRow(log).map(rowToAnimal)
}

/** The part of an animal that the day's figures are made of. */
export type DayFigures = Pick<
  AnimalTable,
  'state' | 'outcome' | 'arrived_ms' | 'assigned_ms' | 'finished_ms' | 'sampler'
>

const figureRows = prepareAll((db, p: Params<{ day: LocalDate }>) =>
  db
    .selectFrom('animal')
    .select(['state', 'outcome', 'arrived_ms', 'assigned_ms', 'finished_ms', 'sampler'])
    .where('day', '=', p('day'))
    .where('state', '<>', 'struck-out'),
)

/** What a day's totals and waits are made of. */
export function dayFigures(log: ReadableLog, day: LocalDate): DayFigures[] {
  return figureRows(log, { day })
}

function rowToAnimal(row: AnimalTable): AnimalRecord {
  return {
    animal: row.animal,
    day: row.day,
    facts: {
      hunter: row.hunter,
      tag: row.tag,
      species: row.species,
      sex: row.sex,
      age: row.age,
      harvested: row.harvested,
      ...(row.harvested_at === null ? {} : { harvestedAt: row.harvested_at }),
      place: JSON.parse(row.place) as HarvestPlace,
      head: JSON.parse(row.head) as HeadCondition,
      consent: row.consent,
      programme: row.programme,
    },
    contact: row.contact,
    noSample: row.no_sample,
    state: row.state,
    arrivedMs: row.arrived_ms,
    assignedMs: row.assigned_ms,
    sampler: row.sampler,
    outcome: row.outcome,
    finishedMs: row.finished_ms,
  }
}
