/** Reading entries back: in the order of a merged log, of one desk, of one kind. */
import type { SelectQueryBuilder } from 'kysely'
import { sql } from 'kysely'
import type { Entry } from '../../shared-types/entry.ts'
import type { DeskId } from '../../shared-types/sample-number.ts'
import { type Stamp, zeroStamp } from '../../shared-types/stamp.ts'
import type { ReadableLog } from '../connection.ts'
import type { Database, EntryTable } from '../schema.ts'
import { type Params, prepareAll, prepareOne } from '../statement.ts'

/** Entries come in portions, so that a reader may write between two of them. */
const portion = 2000

type Row = EntryTable
type Place = Pick<Row, 'ms' | 'n' | 'desk' | 'seq' | 'hash'>

const beforeAll: Place = { ms: -1, n: 0, desk: '' as DeskId, seq: 0, hash: '' }

/** The order of a merged log: clock, then desk, then seq; the branches of a fork by their hash. */
function inOrder(query: SelectQueryBuilder<Database, 'entry', Row>) {
  return query.orderBy('ms').orderBy('n').orderBy('desk').orderBy('seq').orderBy('hash')
}

const after = (p: Params<Place>) =>
  sql<boolean>`(ms, n, desk, seq, hash) > (${p('ms')}, ${p('n')}, ${p('desk')}, ${p('seq')}, ${p('hash')})`

const nextInOrder = prepareAll((db, p: Params<Place>) =>
  inOrder(db.selectFrom('entry').selectAll()).where(after(p)).limit(portion),
)

const nextOfKind = prepareAll((db, p: Params<Place & { kind: string }>) =>
  inOrder(db.selectFrom('entry').selectAll())
    .where('kind', '=', p('kind'))
    .where(after(p))
    .limit(portion),
)

const nextOfDesk = prepareAll((db, p: Params<Pick<Place, 'desk' | 'seq' | 'hash'>>) =>
  db
    .selectFrom('entry')
    .selectAll()
    .where('desk', '=', p('desk'))
    .where(sql<boolean>`(seq, hash) > (${p('seq')}, ${p('hash')})`)
    .orderBy('seq')
    .orderBy('hash')
    .limit(portion),
)

/** Every entry, in the order of a merged log. */
export function* entriesInOrder(log: ReadableLog): Generator<Entry> {
  yield* inPortions(beforeAll, (place) => nextInOrder(log, place))
}

/** Every entry of one kind, in the order of a merged log. */
export function* entriesOfKind(log: ReadableLog, kind: string): Generator<Entry> {
  yield* inPortions(beforeAll, (place) => nextOfKind(log, { ...place, kind }))
}

/** Every entry of one desk by its number; the branches of a fork one beside the other. */
export function* entriesOfDesk(log: ReadableLog, desk: DeskId): Generator<Entry> {
  yield* inPortions({ ...beforeAll, desk }, (place) => nextOfDesk(log, place))
}

function* inPortions(start: Place, next: (place: Place) => Row[]): Generator<Entry> {
  let rows = next(start)
  while (rows.length > 0) {
    yield* rows.map(rowToEntry)
    rows = next(rows.at(-1) as Row)
  }
}

function rowToEntry({ ms, n, body, ...rest }: Row): Entry {
  return { ...rest, at: { ms, n }, body: JSON.parse(body) as Entry['body'] }
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

const same = prepareOne((db, p: Params<Pick<Row, 'desk' | 'seq' | 'hash'>>) =>
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
