/** What the line's forecasts rest on: work done, waits told, pairs set aside, the air, breaks. */
import type { HarvestPlace, HeadCondition, Programme, Species } from '../../shared-types/animal.ts'
import type { LocalDate } from '../../shared-types/local-date.ts'
import type { AnimalNumber, PersonId } from '../../shared-types/sample-number.ts'
import type { ReadableLog } from '../connection.ts'
import { type Params, prepareAll, prepareOne } from '../statement.ts'

/** An animal of a day as far as time and work go. */
export interface DayAnimal {
  readonly species: Species
  readonly head: HeadCondition
  readonly programme: Programme
  readonly joinsLine: boolean
  readonly left: boolean
  readonly arrivedMs: number
  readonly assignedMs: number | null
  readonly finishedMs: number | null
  readonly sampler: PersonId | null
}

const dayRows = prepareAll((db, p: Params<{ day: LocalDate }>) =>
  db
    .selectFrom('animal')
    .select(['species', 'head', 'programme', 'no_sample', 'arrived_ms', 'assigned_ms'])
    .select(['finished_ms', 'sampler', 'state'])
    .where('day', '=', p('day'))
    .where('state', '<>', 'struck-out')
    .orderBy('arrived_ms'),
)

/** The animals of a day, first come first. */
export function animalsOfDay(log: ReadableLog, day: LocalDate): DayAnimal[] {
  return dayRows(log, { day }).map((row) => ({
    species: row.species,
    head: JSON.parse(row.head) as HeadCondition,
    programme: row.programme,
    joinsLine: row.no_sample === null,
    left: row.state === 'left',
    arrivedMs: row.arrived_ms,
    assignedMs: row.assigned_ms,
    finishedMs: row.finished_ms,
    sampler: row.sampler,
  }))
}

const takenRows = prepareAll((db, p: Params<{ day: LocalDate; after: number }>) =>
  db
    .selectFrom('animal')
    .select(['arrived_ms as arrivedMs', 'assigned_ms as assignedMs', 'sampler'])
    .where('day', '=', p('day'))
    .where('arrived_ms', '>', p('after'))
    .where('assigned_ms', 'is not', null)
    .where('sampler', 'is not', null),
)

/** Animals of a day that came after a moment and were given to a sampler. */
export function takenAfter(
  log: ReadableLog,
  day: LocalDate,
  afterMs: number,
): { arrivedMs: number; assignedMs: number; sampler: PersonId }[] {
  return takenRows(log, { day, after: afterMs }).flatMap(({ arrivedMs, assignedMs, sampler }) =>
    assignedMs !== null && sampler !== null ? [{ arrivedMs, assignedMs, sampler }] : [],
  )
}

/** A wait as it was told, in minutes from arrival, and when it was over. */
export interface ToldWait {
  readonly low: number
  readonly high: number
  readonly arrivedMs: number
  readonly takenMs: number
}

const toldRows = prepareAll((db, p: Params<{ day: LocalDate }>) =>
  db
    .selectFrom('told')
    .innerJoin('animal', 'animal.animal', 'told.animal')
    .select(['low', 'high', 'arrived_ms as arrivedMs', 'taken_ms as takenMs'])
    .where('animal.day', '=', p('day'))
    .where('taken_ms', 'is not', null)
    .orderBy('taken_ms'),
)

/** What the hunters of a day were told whose wait is over, in the order in which the waits ended. */
export function toldAndOver(log: ReadableLog, day: LocalDate): ToldWait[] {
  return toldRows(log, { day }).flatMap(({ takenMs, ...rest }) =>
    takenMs === null ? [] : [{ ...rest, takenMs }],
  )
}

const toldRow = prepareOne((db, p: Params<{ animal: AnimalNumber }>) =>
  db.selectFrom('told').select(['low', 'high']).where('animal', '=', p('animal')),
)

/** What the hunter of an animal was told; undefined before. */
export function toldOf(
  log: ReadableLog,
  animal: AnimalNumber,
): { low: number; high: number } | undefined {
  return toldRow(log, { animal })
}

const asideRows = prepareAll((db) =>
  db
    .selectFrom('set_aside')
    .innerJoin('animal', 'animal.animal', 'set_aside.animal')
    .select(['set_aside.animal', 'set_aside.sampler'])
    .where('animal.state', 'in', ['waiting', 'with-sampler']),
)

/** Pairs set aside among the animals in the line. */
export function setAsides(log: ReadableLog): { animal: AnimalNumber; sampler: PersonId }[] {
  return asideRows(log)
}

const airRow = prepareOne((db) =>
  db.selectFrom('air').select(['celsius', 'ms']).orderBy('ms', 'desc').limit(1),
)

/** The air at the line as last read, or null. */
export function latestAir(log: ReadableLog): { celsius: number; ms: number } | null {
  return airRow(log) ?? null
}

const dutyRows = prepareAll((db) => db.selectFrom('person').select(['person', 'duty_ms']))

/** Since when each person's duty has been as it is. */
export function dutySince(log: ReadableLog): ReadonlyMap<PersonId, number | null> {
  return new Map(dutyRows(log).map(({ person, duty_ms }) => [person, duty_ms]))
}

const unopenedRow = prepareOne((db) =>
  db
    .selectFrom('animal')
    .leftJoin('kit', (join) =>
      join.onRef('kit.animal', '=', 'animal.animal').on('kit.state', '=', 'opened'),
    )
    .select((eb) => eb.fn.countAll<number>().as('count'))
    .where('animal.state', 'in', ['waiting', 'with-sampler'])
    .where('kit.kit', 'is', null),
)

/** Animals in the line that still need a kit. */
export function animalsWithoutKit(log: ReadableLog): number {
  return unopenedRow(log)?.count ?? 0
}

const placeRows = prepareAll((db, p: Params<{ day: LocalDate }>) =>
  db
    .selectFrom('animal')
    .select(['animal', 'place'])
    .where('day', '=', p('day'))
    .where('state', 'in', ['waiting', 'with-sampler', 'finished'])
    .orderBy('animal'),
)

/** Where each animal of a day was taken that is sampled or is to be. */
export function placesOfDay(
  log: ReadableLog,
  day: LocalDate,
): { animal: AnimalNumber; place: HarvestPlace }[] {
  return placeRows(log, { day }).map(({ animal, place }) => ({
    animal,
    place: JSON.parse(place) as HarvestPlace,
  }))
}
