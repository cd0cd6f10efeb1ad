/**
 * What is kept beside the entries and never in them: how to reach a hunter, and the records of PINs.
 * Written in the same transaction as the entry that tells of it.
 */
import type { Contact } from '../shared-types/animal.ts'
import type { PersonId } from '../shared-types/sample-number.ts'
import type { ReadableLog } from './connection.ts'
import type { LogTransaction } from './log/append.ts'
import { type Params, prepareOne, prepareRun } from './statement.ts'

const putContact = prepareRun((db, p: Params<{ digest: string; salt: string; details: string }>) =>
  db
    .insertInto('contact')
    .values({ digest: p('digest'), salt: p('salt'), details: p('details') })
    .onConflict((conflict) => conflict.column('digest').doNothing()),
)

/** Keeps a contact under the digest that its entry carries. */
export function keepContact(
  tx: LogTransaction,
  kept: { digest: string; salt: string; details: string },
): void {
  putContact(tx, kept)
}

const contactRow = prepareOne((db, p: Params<{ digest: string }>) =>
  db.selectFrom('contact').select('details').where('digest', '=', p('digest')),
)

/** The contact behind a digest, or null once it was purged. */
export function contactOf(log: ReadableLog, digest: string): Contact | null {
  const row = contactRow(log, { digest })
  return row ? (JSON.parse(row.details) as Contact) : null
}

const putPin = prepareRun((db, p: Params<{ person: PersonId; record: string }>) =>
  db
    .insertInto('pin')
    .values({ person: p('person'), record: p('record') })
    .onConflict((conflict) => conflict.column('person').doUpdateSet({ record: p('record') })),
)

/** Keeps the scrypt record of a person's PIN, in place of the one before. */
export function keepPin(tx: LogTransaction, person: PersonId, record: string): void {
  putPin(tx, { person, record })
}

const pinRow = prepareOne((db, p: Params<{ person: PersonId }>) =>
  db.selectFrom('pin').select('record').where('person', '=', p('person')),
)

export function pinRecordOf(log: ReadableLog, person: PersonId): string | null {
  return pinRow(log, { person })?.record ?? null
}
