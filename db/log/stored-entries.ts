/** Entries as their bytes lie in the file, for checking rather than for use. */
import { sql } from 'kysely'
import type { DeskId } from '../../shared-types/sample-number.ts'
import type { ReadableLog } from '../connection.ts'
import type { EntryTable } from '../schema.ts'
import { type Params, prepareAll } from '../statement.ts'

/** The body as bytes: text read leniently could hide an altered one. */
export type StoredEntry = Omit<EntryTable, 'body'> & { readonly body: Buffer }

type Place = Pick<StoredEntry, 'desk' | 'seq' | 'hash'>

const portion = 2000

const next = prepareAll((db, p: Params<Place>) =>
  db
    .selectFrom('entry')
    .select(['desk', 'seq', 'ms', 'n', 'by', 'kind', 'v', 'prev', 'hash'])
    .select(sql<Buffer>`CAST(body AS BLOB)`.as('body'))
    .where(sql<boolean>`(desk, seq, hash) > (${p('desk')}, ${p('seq')}, ${p('hash')})`)
    .orderBy('desk')
    .orderBy('seq')
    .orderBy('hash')
    .limit(portion),
)

/** All entries, chain by chain: in the order desk, seq, hash. */
export function* storedEntries(log: ReadableLog): Generator<StoredEntry> {
  let place: Place | undefined = { desk: '' as DeskId, seq: 0, hash: '' }
  while (place !== undefined) {
    const rows: StoredEntry[] = next(log, place)
    yield* rows
    place = rows.at(-1)
  }
}
