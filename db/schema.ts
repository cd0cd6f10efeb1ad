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

/** What a hunter left for being told the result. Apart from the entries, so that it can be purged. */
export interface ContactTable {
  /** SHA-256 of salt and details, as the entry holds it. */
  digest: string
  salt: string
  /** JSON text of the details. */
  details: string
}

/** The scrypt record of a person's PIN: never in an entry, never in an export. */
export interface PinTable {
  person: PersonId
  record: string
}

export interface LogTables {
  entry: EntryTable
  own_desk: OwnDeskTable
  contact: ContactTable
  pin: PinTable
}

export type Database = LogTables & ReadTables
