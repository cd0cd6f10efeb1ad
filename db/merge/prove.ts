/**
 * Proving the rows of a sound file where they lie, without taking each of them apart. The database puts
 * together the text that an entry's hash is over; what is proved is what `provedRow` would prove.
 */
import { hash } from 'node:crypto'
import { isUtf8 } from 'node:buffer'
import type { Connection } from '../connection.ts'
import { entryColumns } from './entry-columns.ts'
import { isDesk, isKind, isObjectText, isPerson } from './row-proof.ts'

/** Rows that do not prove what they say, by their place in the file; all others do. */
export interface Proof {
  readonly unproved: readonly number[]
}

const inOneGo = 1000
const whole = (column: string, least: number) =>
  `typeof("${column}") = 'integer' AND "${column}" BETWEEN ${least} AND ${Number.MAX_SAFE_INTEGER}`
const hex = (column: string) =>
  `typeof("${column}") = 'text' AND length("${column}") = 64 AND octet_length("${column}") = 64
   AND "${column}" NOT GLOB '*[^0-9a-f]*'`

/** `tail` is null where a column is not what an entry's may be. Desk, person and kind are looked at apart. */
const rowsText = `SELECT rowid, body, hash,
  "prev" || '{"at":{"ms":' || "ms" || ',"n":' || "n" || ',"wall":' || "wall" || '},"body":',
  CASE WHEN ${whole('seq', 1)} AND ${whole('ms', 0)} AND ${whole('n', 0)} AND ${whole('wall', 0)}
    AND ${whole('v', 1)} AND ${hex('prev')} AND typeof("hash") = 'text' AND typeof("body") = 'text'
  THEN ',"by":' || coalesce('"' || "by" || '"', 'null') || ',"desk":"' || "desk" || '","kind":"'
    || "kind" || '","seq":' || "seq" || ',"v":' || "v" || '}' END
  FROM entry NOT INDEXED WHERE rowid > ? ORDER BY rowid LIMIT ${inOneGo}`

type Row = readonly [at: number, body: string, hash: string, head: string, tail: string | null]

/**
 * Proves every row, some at a time; null where the table is not as this program makes it, or breaks while
 * it is read: its rows are then looked at one by one.
 */
export function* proofOf(connection: Connection): Generator<number, Proof | null> {
  if (!isPlain(connection) || !namesAreGood(connection)) return null
  const some = connection.prepare<[number], Row>(rowsText).raw()
  const unproved: number[] = []
  let at = Number.MIN_SAFE_INTEGER
  for (let rows = some.all(at); rows.length > 0; rows = some.all(at)) {
    for (const row of rows) if (!isProved(connection, row)) unproved.push(row[0])
    at = rows.at(-1)?.[0] ?? at
    yield rows.length
  }
  return { unproved }
}

function isProved(connection: Connection, [at, body, said, head, tail]: Row): boolean {
  if (tail === null || hash('sha256', head + body + tail) !== said || !isObjectText(body))
    return false
  // Bytes that are no text are read as this character, and the hash would not tell.
  return !body.includes('\uFFFD') || isUtf8(bytesAt(connection, at))
}

function bytesAt(connection: Connection, at: number): Buffer {
  const bytes = connection.prepare<[number], Buffer>(
    'SELECT CAST(body AS BLOB) FROM entry WHERE rowid = ?',
  )
  return bytes.pluck().get(at) ?? Buffer.of(0xff)
}

/** Just our columns, so that `rowid` is the place in the file, and places that a number can hold. */
function isPlain(connection: Connection): boolean {
  const names = (connection.pragma('table_xinfo("entry")') as { name: string }[]).map(
    ({ name }) => name,
  )
  if (names.toSorted().join() !== entryColumns.toSorted().join()) return false
  const ends = connection.prepare<[], [number | null, number | null]>(
    'SELECT min(rowid), max(rowid) FROM entry NOT INDEXED',
  )
  return (ends.raw().get() ?? []).every((end) => end === null || Number.isSafeInteger(end))
}

/** A season's entries name a few hundred desks, people and kinds: each is looked at once. */
function namesAreGood(connection: Connection): boolean {
  const names = ['desk', 'by', 'kind'].map((column) => `"${column}" COLLATE BINARY`).join(', ')
  return connection
    .prepare<[], [unknown, unknown, unknown]>(`SELECT DISTINCT ${names} FROM entry NOT INDEXED`)
    .raw()
    .all()
    .every(([desk, by, kind]) => isDesk(desk) && (by === null || isPerson(by)) && isKind(kind))
}
