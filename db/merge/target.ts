/**
 * The log a merge writes: a part file beside it, made without waiting for the disk, because it is thrown away
 * unless it is finished; then put in place of the old one in one step.
 */
import { closeSync, existsSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs'
import { dirname } from 'node:path'
import type { Statement } from 'better-sqlite3'
import { granted, type Result } from '../../shared-types/result.ts'
import { type DeskId, nobodysDesk } from '../../shared-types/sample-number.ts'
import {
  type Connection,
  connectForBulk,
  connectionOf,
  forBulk,
  WritableLog,
} from '../connection.ts'
import { makeTables } from '../log/create.ts'
import { storing } from '../storage-refusal.ts'
import { openLog } from '../log/open.ts'
import { countEntries, desksOf } from '../log/read-entries.ts'
import { type Folding, type Refolded, refoldSteps } from '../log/rebuild.ts'
import { latestFormat } from '../migrations/list.ts'
import { readTablesOf, withoutIndexes } from '../migrations/migrate.ts'
import { markOfLog } from './log-mark.ts'
import type { ContactTable, EntryTable, SealKeyTable, UnprovedTable } from '../schema.ts'
import { entryColumnNames, entryColumns } from './entry-columns.ts'
import { betterKey, partSql } from './part-sql.ts'
import { Ties } from './ties.ts'
import { noFolder, notAMergedLog, outInUse } from './merge-refusals.ts'

/** Begins the part file of a merged log: a copy of `out` if that is there, else a new log. */
export function beginTarget(out: string, office: DeskId | null): Result<Target> {
  const part = `${out}.part`
  removeLog(part)
  const begun = existsSync(out) ? copied(out, part) : created(part, office ?? nobodysDesk)
  if (!begun.ok) {
    removeLog(part)
    return begun
  }
  return granted(new Target(out, part, begun.value))
}

interface Begun {
  readonly connection: Connection
  readonly desk: DeskId
  readonly practice: boolean | null
}

function created(part: string, desk: DeskId): Result<Begun> {
  return storing(() => {
    if (!existsSync(dirname(part))) return noFolder(part)
    const connection = connectForBulk(part)
    connection.transaction(() => makeTables(connection, desk))()
    return granted({ connection, desk, practice: null })
  })
}

function copied(out: string, part: string): Result<Begun> {
  const opened = openLog(out)
  if (!opened.ok) return opened
  const log = opened.value
  try {
    const mark = markOfLog(log)
    if (mark === 'station') return notAMergedLog(out)
    connectionOf(log).prepare('VACUUM INTO ?').run(part)
    return granted({ connection: connectForBulk(part), desk: log.desk, practice: mark })
  } finally {
    log.close()
    if (!existsSync(`${out}-wal`)) rmSync(`${out}-shm`, { force: true })
  }
}

/** Removes a log with the files that the database keeps beside it. */
export function removeLog(path: string): void {
  for (const part of ['', '-wal', '-shm', '-journal']) rmSync(path + part, { force: true })
}

/** Entries inserted by one statement. */
const entriesAtOnce = 32

function insertEntries(rows: number): string {
  const row = `(${entryColumns.map(() => '?').join(', ')})`
  return `INSERT OR IGNORE INTO entry (${entryColumnNames}) VALUES ${Array.from({ length: rows }, () => row).join(', ')}`
}

const entryIndexes =
  "SELECT name, sql FROM sqlite_schema WHERE type = 'index' AND tbl_name = 'entry' AND sql IS NOT NULL"

export class Target {
  readonly practice: boolean | null
  readonly #out: string
  readonly #part: string
  readonly #connection: Connection
  readonly #log: WritableLog
  readonly #insertMany: Statement<unknown[]>
  readonly #keepContact: Statement<unknown[]>
  readonly #keepSealKey: Statement<unknown[]>
  readonly #keepUnproved: Statement<unknown[]>
  readonly #indexes: readonly { name: string; sql: string }[]
  #changed = false
  #pending: unknown[] = []
  #added = 0

  constructor(out: string, part: string, begun: Begun) {
    this.practice = begun.practice
    this.#out = out
    this.#part = part
    this.#connection = begun.connection
    this.#log = new WritableLog(this.#connection, part, begun.desk, latestFormat)
    this.#indexes = this.#connection.prepare<[], { name: string; sql: string }>(entryIndexes).all()
    for (const { name } of this.#indexes) this.#connection.exec(`DROP INDEX "${name}"`)
    this.#insertMany = this.#connection.prepare(insertEntries(entriesAtOnce))
    this.#keepContact = this.#connection.prepare(
      'INSERT OR IGNORE INTO contact (digest, salt, details) VALUES (?, ?, ?)',
    )
    this.#keepSealKey = this.#connection.prepare(
      `INSERT INTO seal_key (id, under_passphrase) VALUES (?, ?) ${betterKey}`,
    )
    this.#keepUnproved = this.#connection.prepare(
      'INSERT OR IGNORE INTO unproved (key, what, desk, seq, holds) VALUES (?, ?, ?, ?, ?)',
    )
  }

  /**
   * Takes in what lies in a sound file, but for the rows at some places; answers how many were not there
   * before. The file's own connection reaches over: an image in memory cannot be reached from here.
   */
  takeAllFrom(source: Connection, unproved: readonly number[]): number {
    source.prepare('ATTACH ? AS merged').run(this.#part)
    try {
      for (const setting of forBulk) source.pragma(`merged.${setting}`)
      const copy = source.prepare(`INSERT OR IGNORE INTO merged.entry (${entryColumnNames})
        SELECT ${entryColumnNames} FROM main.entry NOT INDEXED
        WHERE rowid NOT IN (SELECT value FROM json_each(?)) ORDER BY rowid`)
      const { changes } = copy.run(JSON.stringify(unproved))
      this.#note(changes)
      return changes
    } finally {
      source.exec('DETACH merged')
    }
  }

  /** Does many small writes as one: all that `act` keeps is there when it returns. */
  together<T>(act: () => T): T {
    return this.#connection.transaction(act)()
  }

  /** Takes an entry in, together with others; `settle` tells how many were new. */
  takeIn(row: EntryTable): void {
    const { desk, seq, ms, n, wall, by, kind, v, body, prev, hash } = row
    this.#pending.push(desk, seq, ms, n, wall, by, kind, v, body, prev, hash)
    if (this.#pending.length === entriesAtOnce * entryColumns.length)
      this.#insertPending(this.#insertMany)
  }

  /** Has every entry taken in stand in the log; answers how many of them were not there before. */
  settle(): number {
    const rows = this.#pending.length / entryColumns.length
    if (rows > 0) this.#insertPending(this.#connection.prepare(insertEntries(rows)))
    const added = this.#added
    this.#added = 0
    return added
  }

  #insertPending(insert: Statement<unknown[]>): void {
    const { changes } = insert.run(this.#pending)
    this.#note(changes)
    this.#added += changes
    this.#pending = []
  }

  keepContact({ digest, salt, details }: ContactTable): boolean {
    return this.#note(this.#keepContact.run(digest, salt, details).changes)
  }

  /** A key that only one file has under a passphrase is kept so; of two records either opens it. */
  keepSealKey({ id, under_passphrase: record }: SealKeyTable): boolean {
    return this.#note(this.#keepSealKey.run(id, record).changes)
  }

  unproved({ key, what, desk, seq, holds }: UnprovedTable): boolean {
    return this.#note(this.#keepUnproved.run(key, what, desk, seq, holds).changes)
  }

  #note(changes: number): boolean {
    if (changes > 0) this.#changed = true
    return changes > 0
  }

  /** Whether the merge has brought anything that was not there. */
  get changed(): boolean {
    return this.#changed
  }

  entries(): number {
    return countEntries(this.#log)
  }

  desks(): DeskId[] {
    return desksOf(this.#log)
  }

  /** Folds all entries, in their order, into fresh read tables. */
  *fold(folding: Folding = {}): Generator<number, Refolded> {
    this.#connection.exec('BEGIN')
    if (folding.isPart !== true) this.#putIndexesBack()
    const folded = yield* refoldSteps(this.#log, this.#connection, folding)
    if (folding.isPart !== true) leavePurgedOut(this.#connection)
    this.#connection.exec('COMMIT')
    return folded
  }

  #putIndexesBack(): void {
    for (const { sql } of this.#indexes) this.#connection.exec(sql)
  }

  /**
   * Takes in parts whose entries meet in no row of a read table, neither each other's nor what is here:
   * all of each, its read tables too. In place of a fold; `forParts` goes before the first.
   */
  takePart(part: string): void {
    this.#connection.prepare('ATTACH ? AS part').run(part)
    try {
      this.together(() => {
        for (const sql of partSql(readTablesOf(this.#connection))) this.#connection.exec(sql)
      })
      this.#changed = true
    } finally {
      this.#connection.exec('DETACH part')
    }
  }

  /** Takes the indexes of the read tables away; answers with how to complete the log once all parts are in. */
  forParts(): () => void {
    const putIndexesBack = withoutIndexes(this.#connection)
    return () => {
      this.#putIndexesBack()
      putIndexesBack()
      leavePurgedOut(this.#connection)
    }
  }

  /** A tie between desks, for every row that their entries meet in while they are folded. */
  ties(): Ties {
    return new Ties(this.#connection)
  }

  /** Leaves the part file as it is, for whoever takes it up. */
  leave(): void {
    this.#connection.close()
  }

  /** Puts the part file in place; refuses `log-in-use` if another program has the old one open. */
  finish(): Result<void> {
    this.#connection.pragma('journal_mode = WAL')
    this.#connection.close()
    if (existsSync(`${this.#out}-wal`)) return outInUse(this.#out)
    if (!this.#changed && existsSync(this.#out)) removeLog(this.#part)
    else putInPlace(this.#part, this.#out)
    return granted(undefined)
  }

  /** Throws the part file away. */
  drop(): void {
    if (this.#connection.open) this.#connection.close()
    removeLog(this.#part)
  }
}

/**
 * Contacts that were erased for good do not come back with a file from before: a station erases those
 * of its own animals, an office those of all.
 */
function leavePurgedOut(connection: Connection): void {
  // Zeros are written over them, also in a file that is not finished yet.
  connection.pragma('secure_delete = ON')
  connection.exec(`DELETE FROM contact WHERE digest IN (
    SELECT animal.contact FROM animal JOIN entry ON entry.kind = 'contacts.purged'
      LEFT JOIN station ON station.desk = entry.desk
    WHERE animal.contact IS NOT NULL AND animal.day <= entry.body ->> '$.upTo'
      AND (animal.desk = entry.desk OR station.office = 1))`)
}

function putInPlace(part: string, out: string): void {
  const file = openSync(part, 'r+')
  fsyncSync(file)
  closeSync(file)
  renameSync(part, out)
}
