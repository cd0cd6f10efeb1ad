/**
 * What is kept beside the entries and never in them: how to reach a hunter, sealed, and the records of
 * PINs. Written in the same transaction as the entry that tells of it.
 */
import type { LocalDate } from '../shared-types/local-date.ts'
import type { PersonId } from '../shared-types/sample-number.ts'
import { connectionOf, type ReadableLog } from './connection.ts'
import type { LogTransaction } from './log/append.ts'
import { type Params, prepareAll, prepareOne, prepareRun } from './statement.ts'

/** A contact that nobody can read without its key. `digest` is SHA-256 of salt and details. */
export interface SealedContact {
  readonly digest: string
  /** `key.nonce` */
  readonly salt: string
  readonly details: string
}

const putContact = prepareRun((db, p: Params<{ digest: string; salt: string; details: string }>) =>
  db
    .insertInto('contact')
    .values({ digest: p('digest'), salt: p('salt'), details: p('details') })
    .onConflict((conflict) => conflict.column('digest').doNothing()),
)

/** Keeps a contact under the digest that its entry carries. */
export function keepContact(tx: LogTransaction, kept: SealedContact): void {
  putContact(tx, { ...kept })
}

const contactRow = prepareOne((db, p: Params<{ digest: string }>) =>
  db.selectFrom('contact').selectAll().where('digest', '=', p('digest')),
)

/** The contact behind a digest, or null once it was purged. */
export function contactOf(log: ReadableLog, digest: string): SealedContact | null {
  return contactRow(log, { digest }) ?? null
}

const contactCount = prepareOne((db) =>
  db.selectFrom('contact').select((eb) => eb.fn.countAll<number>().as('contacts')),
)

export function countContacts(log: ReadableLog): number {
  return contactCount(log)?.contacts ?? 0
}

const dropContacts = prepareRun((db, p: Params<{ upTo: LocalDate }>) =>
  db.deleteFrom('contact').where('digest', 'in', (eb) =>
    eb
      .selectFrom('animal')
      .select((each) => each.ref('animal.contact').$notNull().as('digest'))
      .where('animal.contact', 'is not', null)
      .where('animal.day', '<=', p('upTo')),
  ),
)

/** Erases the contacts of animals of days up to one, and answers how many there were. */
export function purgeContacts(tx: LogTransaction, upTo: LocalDate): number {
  return dropContacts(tx, { upTo })
}

/**
 * Empties the WAL file, in which a purged contact would otherwise still lie; in the log itself
 * `secure_delete` has written zeros over it. False if another connection kept it from happening.
 */
export function emptyWal(log: ReadableLog): boolean {
  const [row] = connectionOf(log).pragma('wal_checkpoint(TRUNCATE)') as { busy: number }[]
  return row?.busy === 0
}

const sealKeyRows = prepareAll((db) => db.selectFrom('seal_key').selectAll().orderBy('id'))

/** A key under which contacts of this log are sealed; the key itself only ever under a passphrase. */
export interface SealKey {
  readonly id: string
  readonly underPassphrase: string | null
}

/** The keys of a log: one of its own, and after a merge those of the logs it took in. */
export function sealKeysOf(log: ReadableLog): SealKey[] {
  return sealKeyRows(log).map(({ id, under_passphrase }) => ({
    id,
    underPassphrase: under_passphrase,
  }))
}

const putSealKey = prepareRun((db, p: Params<{ id: string; record: string | null }>) =>
  db
    .insertInto('seal_key')
    .values({ id: p('id'), under_passphrase: p('record') })
    .onConflict((conflict) => conflict.column('id').doUpdateSet({ under_passphrase: p('record') })),
)

/** Notes a key of this log, or the passphrase record that opens it elsewhere. */
export function noteSealKey(tx: LogTransaction, { id, underPassphrase }: SealKey): void {
  putSealKey(tx, { id, record: underPassphrase })
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
