/** Reading entries back: in the order of a merged log, of one desk, of one kind. */
import type { SelectQueryBuilder } from 'kysely'
import { sql } from 'kysely'
import type { Entry } from '../../shared-types/entry.ts'
import type { DeskId } from '../../shared-types/sample-number.ts'
import { type Stamp, zeroStamp } from '../../shared-types/stamp.ts'
import type { ReadableLog } from '../connection.ts'
import type { Database, EntryTable } from '../schema.ts'
import { type Params, prepareAll, prepareColumn, prepareOne } from '../statement.ts'

/**
 * The places in the file come first, all at once, then one entry after another: a reader may write
 * between two of them, and damaged text in a column cannot make the reading go round in circles. A
 * million places are a few megabytes, as long as each is a bare number.
 */
type Place = { readonly at: number }

const rowid = sql<number>`entry.rowid`

/** The order of a merged log: clock, then desk, then seq; the branches of a fork by their hash. */
function inOrder<P extends Place>(query: SelectQueryBuilder<Database, 'entry', P>) {
  return query.orderBy('ms').orderBy('n').orderBy('desk').orderBy('seq').orderBy('hash')
}

const places = prepareColumn((db) => inOrder(db.selectFrom('entry').select(rowid.as('at'))))

const placesOfKind = prepareColumn((db, p: Params<{ kind: string }>) =>
  inOrder(db.selectFrom('entry').select(rowid.as('at'))).where('kind', '=', p('kind')),
)

const placesByKind = prepareAll((db) =>
  inOrder(db.selectFrom('entry').select([rowid.as('at'), 'entry.kind'])),
)

const placesOfDesk = prepareColumn((db, p: Params<{ desk: DeskId }>) =>
  db
    .selectFrom('entry')
    .select(rowid.as('at'))
    .where('desk', '=', p('desk'))
    .orderBy('seq')
    .orderBy('hash'),
)

/** Every entry, in the order of a merged log. */
export function entriesInOrder(log: ReadableLog): Generator<Entry> {
  return entriesAt(log, places(log))
}

/** Every entry of one kind, in the order of a merged log. */
export function entriesOfKind(log: ReadableLog, kind: string): Generator<Entry> {
  return entriesAt(log, placesOfKind(log, { kind }))
}

/** Every entry of any of these kinds, in the order of a merged log. */
export function entriesOfKinds(log: ReadableLog, kinds: readonly string[]): Generator<Entry> {
  const wanted = new Set(kinds)
  return entriesAt(
    log,
    placesByKind(log).flatMap(({ at, kind }) => (wanted.has(kind) ? [at] : [])),
  )
}

/** Every entry of one desk by its number; the branches of a fork one beside the other. */
export function entriesOfDesk(log: ReadableLog, desk: DeskId): Generator<Entry> {
  return entriesAt(log, placesOfDesk(log, { desk }))
}

/** CROSS JOIN keeps the places as the outer loop (sqlite.org/lang_select.html), and so their order. */
const rowsAt = prepareAll<EntryTable, { places: string }>((db, p) =>
  db
    .selectFrom(sql<{ value: number }>`json_each(${p('places')})`.as('place'))
    .crossJoin('entry')
    .where(sql<boolean>`entry.rowid = place.value`)
    .selectAll('entry'),
)

/** So many at once: each reading costs as much as several rows. */
const inOneGo = 200

function* entriesAt(log: ReadableLog, found: readonly number[]): Generator<Entry> {
  for (let from = 0; from < found.length; from += inOneGo)
    for (const row of rowsAt(log, { places: JSON.stringify(found.slice(from, from + inOneGo)) }))
      yield rowToEntry(row)
}

/** The entry that a row holds. */
export function rowToEntry({ ms, n, wall, body, ...rest }: EntryTable): Entry {
  return { ...rest, at: { ms, n, wall }, body: JSON.parse(body) as Entry['body'] }
}

/** The end of a desk's chain. */
export type Head = Pick<Entry, 'seq' | 'hash'>

const head = prepareOne((db, p: Params<{ desk: DeskId }>) =>
  db
    .selectFrom('entry')
    .select(['seq', 'hash'])
    .where('desk', '=', p('desk'))
    .orderBy('seq', 'desc')
    .orderBy('hash', 'desc')
    .limit(1),
)

/** The end of a desk's chain; null if it has no entry. Of a fork, the longer branch. */
export function headOf(log: ReadableLog, desk: DeskId): Head | null {
  return head(log, { desk }) ?? null
}

const same = prepareOne((db, p: Params<Pick<Entry, 'desk' | 'seq' | 'hash'>>) =>
  db
    .selectFrom('entry')
    .select('seq')
    .where('desk', '=', p('desk'))
    .where('seq', '=', p('seq'))
    .where('hash', '=', p('hash')),
)

/** Whether the log holds this very entry. */
export function hasEntry(log: ReadableLog, entry: Pick<Entry, 'desk' | 'seq' | 'hash'>): boolean {
  const { desk, seq, hash } = entry
  return same(log, { desk, seq, hash }) !== undefined
}

const desks = prepareAll((db) => db.selectFrom('entry').select('desk').distinct().orderBy('desk'))

/** The desks with entries in this log. */
export function desksOf(log: ReadableLog): DeskId[] {
  return desks(log).map((row) => row.desk)
}

const latest = prepareOne((db) =>
  db.selectFrom('entry').select(['ms', 'n']).orderBy('ms', 'desc').orderBy('n', 'desc').limit(1),
)

/** The latest stamp of any desk in this log: whatever is appended next comes after it. */
export function latestStamp(log: ReadableLog): Stamp {
  return latest(log) ?? zeroStamp
}

const counted = prepareOne((db) =>
  db.selectFrom('entry').select((eb) => eb.fn.countAll<number>().as('entries')),
)

/** How many entries the log holds. */
export function countEntries(log: ReadableLog): number {
  return counted(log)?.entries ?? 0
}
