/** The scrypt records of people's PINs, apart from the entries. Making and checking them is not done here. */
import type { PersonId } from '../shared-types/sample-number.ts'
import type { ReadableLog } from './connection.ts'
import type { LogTransaction } from './log/append.ts'
import { type Params, prepareOne, prepareRun } from './statement.ts'

const put = prepareRun((db, p: Params<{ person: PersonId; record: string }>) =>
  db.replaceInto('pin').values({ person: p('person'), record: p('record') }),
)

/** Keeps the record of a person's new PIN in place of the old one. */
export function keepPin(tx: LogTransaction, person: PersonId, record: string): void {
  put(tx, { person, record })
}

const one = prepareOne((db, p: Params<{ person: PersonId }>) =>
  db.selectFrom('pin').select('record').where('person', '=', p('person')),
)

/** The record of a person's PIN; null if none was set on this desk. */
export function pinOf(log: ReadableLog, person: PersonId): string | null {
  return one(log, { person })?.record ?? null
}
