/**
 * Contact details of hunters, apart from the entries: an entry holds only the salted digest, so the
 * details can be purged once results are told, and the chain still verifies.
 */
import type { Contact } from '../shared-types/animal.ts'
import { canonicalJson } from './canonical-json.ts'
import type { ReadableLog } from './connection.ts'
import type { LogTransaction } from './log/append.ts'
import { sha256 } from './log/hash-chain.ts'
import { type Params, prepareOne, prepareRun } from './statement.ts'

/**
 * SHA-256 of the salt (hex text) and the canonical JSON of the details, 64 hex characters. The salt
 * must be random and at least 16 bytes, else a phone number could be found by trying them all.
 */
export function contactDigest(salt: string, details: Contact): string {
  return sha256(salt + canonicalJson(details))
}

const put = prepareRun((db, p: Params<{ digest: string; salt: string; details: string }>) =>
  db.replaceInto('contact').values({ digest: p('digest'), salt: p('salt'), details: p('details') }),
)

/** Keeps a hunter's details; answers with the digest for the entry. */
export function keepContact(tx: LogTransaction, salt: string, details: Contact): string {
  const digest = contactDigest(salt, details)
  put(tx, { digest, salt, details: canonicalJson(details) })
  return digest
}

const one = prepareOne((db, p: Params<{ digest: string }>) =>
  db.selectFrom('contact').select('details').where('digest', '=', p('digest')),
)

/** The details behind a digest; null if they were purged or never kept here. */
export function contactOf(log: ReadableLog, digest: string): Contact | null {
  const row = one(log, { digest })
  return row === undefined ? null : (JSON.parse(row.details) as Contact)
}

const purgeAll = prepareRun((db) => db.deleteFrom('contact'))

/** Takes all contact details out of the log for good; answers how many there were. */
export function purgeContacts(tx: LogTransaction): number {
  return purgeAll(tx)
}
