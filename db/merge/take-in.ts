/** What of one file goes into the merged log. */
import { sha256 } from '../log/hash-chain.ts'
import type { Json } from '../canonical-json.ts'
import type { Connection } from '../connection.ts'
import type { ContactTable, SealKeyTable, UnprovedTable } from '../schema.ts'
import type { AlteredEntry, DeskFound, FileReport } from './report.ts'
import { type Proof, proofOf } from './prove.ts'
import { entryColumnNames } from './entry-columns.ts'
import { type FoundRow, provedRow } from './row-proof.ts'
import { type Found, isFileFault, type Source } from './source.ts'
import { unprovedRow } from './unproved.ts'
import type { Target } from './target.ts'

/** Takes in what a file proves; tells after every few hundred rows which share of it is done. */
export function* takeIn(target: Target, source: Source): Generator<number, FileReport> {
  const taking = new Taking(target, source)
  const proof = source.sound === null ? null : yield* shared(proofIn(source.sound))
  if (source.sound !== null && proof !== null) taking.seeAll(source.sound, proof)
  else yield* shared(oneByOne(taking, source))
  target.together(() => taking.seeTheRest())
  return taking.report()
}

/** How many rows there are is not known before the end; a file is about this long. */
function* shared<T>(work: Generator<number, T>): Generator<number, T> {
  let rows = 0
  for (let step = work.next(); ; step = work.next()) {
    if (step.done === true) return step.value
    rows += step.value
    yield rows / (rows + 5000)
  }
}

function* proofIn(connection: Connection): Generator<number, Proof | null> {
  try {
    return yield* proofOf(connection)
  } catch (error) {
    if (!isFileFault(error)) throw error
    return null
  }
}

function* oneByOne(taking: Taking, source: Source): Generator<number, void> {
  let rows = 0
  for (const row of untilItBreaks(source.rows())) {
    taking.see(row)
    rows += 1
    if (rows % 500 === 0) yield 500
  }
}

/** A page may turn out bad while it is read, though the file looked sound: what came before stands. */
function* untilItBreaks<T>(rows: Iterable<T>): Generator<T> {
  try {
    yield* rows
  } catch (error) {
    if (!isFileFault(error)) throw error
  }
}

class Taking {
  readonly #target: Target
  readonly #source: Source
  readonly #altered: AlteredEntry[] = []
  readonly #desks = new Map<string, { entries: number; lastSeq: number; lastHash: string }>()
  #seen = 0
  #added = 0
  #unreadable = 0

  constructor(target: Target, source: Source) {
    this.#target = target
    this.#source = source
  }

  /** All rows of a sound file, those left out that did not prove what they say. */
  seeAll(connection: Connection, { unproved }: Proof): void {
    this.#added += this.#target.takeAllFrom(connection, unproved)
    for (const row of rowsAt(connection, unproved)) this.#leaveOut(row)
    for (const { desk, entries, lastSeq } of chainsIn(connection, unproved)) {
      this.#seen += entries
      this.#desks.set(desk, { entries, lastSeq, lastHash: '' })
    }
  }

  see(found: FoundRow): void {
    const row = provedRow(found)
    if (row === null) return this.#leaveOut(found)
    this.#target.takeIn(row)
    this.#seen += 1
    const desk = this.#desks.get(row.desk) ?? { entries: 0, lastSeq: 0, lastHash: '' }
    if (row.seq >= desk.lastSeq) [desk.lastSeq, desk.lastHash] = [row.seq, row.hash]
    desk.entries += 1
    this.#desks.set(row.desk, desk)
  }

  #leaveOut(row: FoundRow): void {
    const unproved = unprovedOf(row)
    if (unproved === null) this.#unreadable += 1
    else {
      this.#altered.push({ desk: String(row.desk), seq: Number(row.seq) })
      this.#target.unproved(unproved)
    }
  }

  seeTheRest(): void {
    this.#added += this.#target.settle()
    for (const contact of untilItBreaks(this.#source.contacts()))
      if (isContact(contact)) this.#target.keepContact(contact)
    for (const key of untilItBreaks(this.#source.sealKeys()))
      if (isSealKey(key)) this.#target.keepSealKey(key)
    for (const found of untilItBreaks(this.#source.unproved())) {
      const unproved = isUnproved(found) ? unprovedOf(JSON.parse(found.holds)) : null
      if (unproved !== null) this.#target.unproved(unproved)
    }
    if (this.#source.digest !== null) this.#noteDamage(this.#source.digest)
  }

  /** Where the chains in a damaged file end, so that a person can look whether that was the end. */
  #noteDamage(digest: string): void {
    const heads = [...this.#desks]
      .map(([desk, { lastSeq, lastHash }]) => ({ desk, seq: lastSeq, hash: lastHash }))
      .toSorted((a, b) => (a.desk < b.desk ? -1 : 1))
    const unproved = unprovedRow({ file: digest, heads, unreadable: this.#unreadable })
    if (unproved !== null) this.#target.unproved(unproved)
  }

  report(): FileReport {
    return {
      file: this.#source.file,
      state: this.#source.state,
      added: this.#added,
      known: this.#seen - this.#added,
      altered: this.#altered,
      unreadable: this.#unreadable,
      desks: [...this.#desks].map(([desk, { entries, lastSeq }]) => ({
        desk: desk as DeskFound['desk'],
        entries,
        lastSeq,
      })),
    }
  }
}

function rowsAt(connection: Connection, places: readonly number[]): FoundRow[] {
  const row = connection.prepare<[number], FoundRow>(
    `SELECT ${entryColumnNames} FROM entry NOT INDEXED WHERE rowid = ?`,
  )
  return places.flatMap((at) => row.get(at) ?? [])
}

function chainsIn(connection: Connection, leftOut: readonly number[]) {
  return connection
    .prepare<[string], { desk: string; entries: number; lastSeq: number }>(
      `SELECT desk, count(*) AS entries, max(seq) AS lastSeq FROM entry NOT INDEXED
       WHERE rowid NOT IN (SELECT value FROM json_each(?)) GROUP BY desk COLLATE BINARY`,
    )
    .all(JSON.stringify(leftOut))
}

/** The row to keep of what was found; null where a cell could not be read as a value at all. */
function unprovedOf(found: object): UnprovedTable | null {
  try {
    return unprovedRow(found as Json)
  } catch {
    return null
  }
}

function isContact(found: Found<ContactTable>): found is ContactTable {
  const { digest, salt, details } = found
  return (
    typeof salt === 'string' && typeof details === 'string' && sha256(salt + details) === digest
  )
}

function isSealKey(found: Found<SealKeyTable>): found is SealKeyTable {
  const { id, under_passphrase: record } = found
  return typeof id === 'string' && (record === null || typeof record === 'string')
}

/** From a log that was itself merged: its key proves what it holds. */
function isUnproved(found: Found<UnprovedTable>): found is UnprovedTable {
  const { key, holds } = found
  return typeof holds === 'string' && sha256(holds) === key
}
