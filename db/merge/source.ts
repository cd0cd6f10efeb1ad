/** One file that is merged: opened as an image in memory, so that nothing of it or beside it changes. */
import { isUtf8 } from 'node:buffer'
import { createHash } from 'node:crypto'
import { existsSync, readFileSync } from 'node:fs'
import { basename } from 'node:path'
import Database from 'better-sqlite3'
import { granted, type Refusal, type Result } from '../../shared-types/result.ts'
import { type Connection, connectInMemory } from '../connection.ts'
import { fileLooks } from '../log/file-header.ts'
import { notFound, openingOf, torn } from '../log/open-refusals.ts'
import { imageOf, withoutWal } from '../log/read-log.ts'
import { latestFormat } from '../migrations/list.ts'
import { formatOf } from '../migrations/migrate.ts'
import type { ContactTable, SealKeyTable, UnprovedTable } from '../schema.ts'
import { entryColumnNames, entryColumns } from './entry-columns.ts'
import { type Pages, pagesOf, recordsOf } from './page-walk.ts'
import { isSetUp, practiceMark, practiceOf } from './practice-mark.ts'
import type { FoundRow } from './row-proof.ts'

/** How a file could be read. */
export type SourceState = 'whole' | 'damaged' | 'newer-version'

export interface Source {
  readonly file: string
  readonly state: SourceState
  /** SHA-256 of the file, of a damaged one. */
  readonly digest: string | null
  /** Marked as practice by its own set-up; null if it says nothing of it. */
  readonly practice: boolean | null
  /** A sound file as a database, so that its rows can be proved and copied where they lie. */
  readonly sound: Connection | null
  /** Rows as found, each of them yet to be proved. */
  readonly rows: () => Iterable<FoundRow>
  readonly contacts: () => Iterable<Found<ContactTable>>
  /** Keys of contacts, themselves under a passphrase. */
  readonly sealKeys: () => Iterable<Found<SealKeyTable>>
  readonly unproved: () => Iterable<Found<UnprovedTable>>
  readonly close: () => void
}

export type Found<T> = { readonly [K in keyof T]: unknown }

/**
 * Opens a file for merging. A damaged one is read as far as it goes. Refuses with `not-found`,
 * `not-a-station-log`, `not-readable`, or `torn` where no page can be read.
 */
export function openSource(path: string): Result<Source> {
  const opened = openingOf(path, () => soundSource(path))
  if (opened.ok || !mayBeSalvaged(opened.refusal)) return opened
  return salvaged(path)
}

const mayBeSalvaged = ({ code }: Refusal) => ['torn', 'log-in-use', 'disk-failed'].includes(code)

function soundSource(path: string): Result<Source> {
  const image = imageOf(path)
  if (image === null) return torn(path)
  const connection = connectInMemory(withoutWal(image))
  letGo(image)
  try {
    if (!isReadable(connection)) {
      connection.close()
      return torn(path)
    }
    return granted(sourceOf(connection, path))
  } catch (error) {
    connection.close()
    throw error
  }
}

/** The database has a copy: a season's files must not pile up until somebody clears them away. */
function letGo({ buffer, byteLength }: Buffer): void {
  if (buffer instanceof ArrayBuffer && buffer.byteLength === byteLength) buffer.transfer(0)
}

const tables = ['entry', 'contact', 'seal_key', 'unproved'] as const

/** Sound pages, and real tables: a view in place of one could be made to never end. */
function isReadable(connection: Connection): boolean {
  const kinds = connection
    .prepare<[], { name: string; type: string; sql: unknown }>(
      'SELECT name, type, sql FROM sqlite_schema WHERE name IN ('
        .concat(tables.map((name) => `'${name}'`).join(', '))
        .concat(')'),
    )
    .all()
  const areTables = kinds.every(
    ({ type, sql }) =>
      type === 'table' && typeof sql === 'string' && sql.startsWith('CREATE TABLE '),
  )
  if (!areTables || !kinds.some(({ name }) => name === 'entry')) return false
  return kinds.every(
    ({ name }) => connection.pragma(`quick_check('${name}')`, { simple: true }) === 'ok',
  )
}

/** By rowid: an index of a stranger's file might leave rows out. */
const rowsText = `SELECT ${entryColumnNames}, CAST(body AS BLOB) AS bytes FROM entry NOT INDEXED ORDER BY rowid`

/** The rows one by one; a body whose bytes are no text is undefined. */
function* rowsOf(connection: Connection): Generator<FoundRow> {
  const rows = connection.prepare<[], FoundRow & { bytes: Buffer | null }>(rowsText)
  for (const { bytes, ...row } of rows.iterate())
    yield bytes !== null && isUtf8(bytes) ? row : { ...row, body: undefined }
}

function sourceOf(connection: Connection, path: string): Source {
  const all = <T>(text: string) =>
    connection.prepare<[], Found<T>>(text).iterate() as Iterable<Found<T>>
  const has = (table: string) =>
    connection.prepare('SELECT 1 FROM sqlite_schema WHERE name = ?').get(table) !== undefined
  return {
    file: basename(path),
    state: formatOf(connection) > latestFormat ? 'newer-version' : 'whole',
    digest: null,
    practice: practiceOf(connection),
    sound: connection,
    rows: () => rowsOf(connection),
    contacts: () => (has('contact') ? all('SELECT digest, salt, details FROM contact') : []),
    sealKeys: () => (has('seal_key') ? all('SELECT id, under_passphrase FROM seal_key') : []),
    unproved: () =>
      has('unproved') ? all('SELECT key, what, desk, seq, holds FROM unproved') : [],
    close: () => connection.close(),
  }
}

/** Reads a damaged file page by page. Its header may be gone; its name and pages speak for it. */
function salvaged(path: string): Result<Source> {
  if (fileLooks(path) === 'missing') return notFound(path)
  const bytes = readFileSync(path)
  const wal = existsSync(`${path}-wal`) ? readFileSync(`${path}-wal`) : null
  const pages = pagesOf(bytes, wal)
  if (pages === null) return torn(path)
  const rows = () => foundRows(pages)
  const found = [...rows()]
  if (found.length === 0) return torn(path)
  return granted({
    file: basename(path),
    state: 'damaged',
    digest: createHash('sha256').update(bytes).digest('hex'),
    sound: null,
    practice: practiceMark(found.filter(isSetUp).map(({ body }) => body)),
    rows,
    contacts: () => foundContacts(pages),
    sealKeys: () => [],
    unproved: () => [],
    close: () => undefined,
  })
}

const columnCounts = new Set<number>([entryColumns.length])
const looksLikeHash = (value: unknown) => typeof value === 'string' && /^[0-9a-f]{64}$/.test(value)

function* foundRows(pages: Pages): Generator<FoundRow> {
  for (const cells of recordsOf(pages, columnCounts)) {
    if (!looksLikeHash(cells[9]) || !looksLikeHash(cells[10])) continue
    yield Object.fromEntries(entryColumns.map((name, at) => [name, cells[at]])) as FoundRow
  }
}

function* foundContacts(pages: Pages): Generator<Found<ContactTable>> {
  for (const [digest, salt, details] of recordsOf(pages, new Set([3])))
    if (looksLikeHash(digest)) yield { digest, salt, details }
}

/** Whether an error says that the file, and not this program, is at fault. */
export function isFileFault(error: unknown): boolean {
  return (
    error instanceof Database.SqliteError && /^SQLITE_(CORRUPT|NOTADB|IOERR|ERROR)/.test(error.code)
  )
}
