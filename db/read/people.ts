/** The crew as it stands, and their planned shifts. */
import type { LocalDate } from '../../shared-types/local-date.ts'
import type { PersonRecord, Training } from '../../shared-types/person.ts'
import type { PersonId } from '../../shared-types/sample-number.ts'
import type { ReadableLog } from '../connection.ts'
import type { PersonTable } from '../read-tables.ts'
import { type Params, prepareAll, prepareOne } from '../statement.ts'

const personRows = prepareAll((db) => db.selectFrom('person').selectAll().orderBy('person'))

/** Everyone ever added, in the order they were. */
export function people(log: ReadableLog): PersonRecord[] {
  return personRows(log).map(rowToPerson)
}

const personRow = prepareOne((db, p: Params<{ person: PersonId }>) =>
  db.selectFrom('person').selectAll().where('person', '=', p('person')),
)

export function personOf(log: ReadableLog, person: PersonId): PersonRecord | null {
  const row = personRow(log, { person })
  return row ? rowToPerson(row) : null
}

const shiftRows = prepareAll((db, p: Params<{ date: LocalDate }>) =>
  db
    .selectFrom('shift')
    .select(['person', 'from_time as from', 'to_time as to'])
    .where('date', '=', p('date')),
)

/** The shifts planned for a date, by person. */
export function shiftsByPerson(
  log: ReadableLog,
  date: LocalDate,
): ReadonlyMap<PersonId, { from: string; to: string }> {
  return new Map(
    shiftRows(log, { date }).map(({ person, from, to }) => [person, { from, to }] as const),
  )
}

function rowToPerson(row: PersonTable): PersonRecord {
  return {
    person: row.person,
    name: row.name,
    role: row.role,
    training: JSON.parse(row.training) as Training[],
    active: row.active === 1,
    duty: row.duty,
  }
}
