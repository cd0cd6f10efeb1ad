/** The tables as Kysely knows them: those of the log itself, and those folded from it for reading. */
import type { DeskId, PersonId } from '../shared-types/sample-number.ts'
import type { ReadTables } from './read-tables.ts'

/** One row an entry, never changed: triggers refuse UPDATE and DELETE. */
export interface EntryTable {
  desk: DeskId
  seq: number
  /** Wall milliseconds since 1970-01-01 UTC of the hybrid clock. */
  ms: number
  /** Counter of the hybrid clock among equal `ms`. */
  n: number
  /** What the laptop's clock read. */
  wall: number
  by: PersonId | null
  kind: string
  v: number
  /** Canonical JSON. */
  body: string
  prev: string
  hash: string
}

/** Which desk this log belongs to: one row. */
export interface OwnDeskTable {
  one: 1
  desk: DeskId
  /** The latest reading of the laptop's clock at an append, or the one the lead accepted. */
  wall_ms: number
}

/** Which laptop goes on with this log: one row once one has. */
export interface LeaseTable {
  one: 1
  holder: string
}

/** A key under which contacts are sealed; itself kept elsewhere, or here sealed under a passphrase. */
export interface SealKeyTable {
  id: string
  under_passphrase: string | null
}

/** What a hunter left for being told the result. Apart from the entries, so that it can be purged. */
export interface ContactTable {
  /** SHA-256 of salt and details, as the entry holds it. */
  digest: string
  /** Which key seals the details, and the number used once: `key.nonce`. */
  salt: string
  /** The details, sealed. */
  details: string
}

/**
 * What a merge met and could not take in as an entry, kept so that nothing is dropped in silence:
 * an entry that does not hash to what it says, or the ends of the chains in a damaged file.
 */
export interface UnprovedTable {
  /** SHA-256 of what it holds, so that merging it again changes nothing. */
  key: string
  what: 'altered' | 'damaged-file'
  desk: DeskId | null
  seq: number | null
  /** JSON text. */
  holds: string
}

/** The scrypt record of a person's PIN: never in an entry, never in an export. */
export interface PinTable {
  person: PersonId
  record: string
}

export interface LogTables {
  entry: EntryTable
  own_desk: OwnDeskTable
  lease: LeaseTable
  seal_key: SealKeyTable
  contact: ContactTable
  unproved: UnprovedTable
  pin: PinTable
}

export type Database = LogTables & ReadTables
