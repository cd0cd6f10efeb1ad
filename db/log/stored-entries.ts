/** Entries as their bytes lie in the file, for checking rather than for use. */
import { sql } from 'kysely'
import type { ReadableLog } from '../connection.ts'
import type { EntryTable } from '../schema.ts'
import { type Params, prepareAll, prepareOne } from '../statement.ts'

/** The body as bytes: text read leniently could hide an altered one. */
export type StoredEntry = Omit<EntryTable, 'body'> & { readonly body: Buffer }

const rowid = sql<number>`entry.rowid`

const places = prepareAll((db) =>
  db.selectFrom('entry').select(rowid.as('at')).orderBy('desk').orderBy('seq').orderBy('hash'),
)

const rowAt = prepareOne((db, p: Params<{ at: number }>) =>
  db
    .selectFrom('entry')
    .select(['desk', 'seq', 'ms', 'n', 'wall', 'by', 'kind', 'v', 'prev', 'hash'])
    .select(sql<Buffer>`CAST(body AS BLOB)`.as('body'))
    .where(rowid, '=', p('at')),
)

/** All entries, chain by chain: in the order desk, seq, hash. */
export function* storedEntries(log: ReadableLog): Generator<StoredEntry> {
  for (const { at } of places(log)) {
    const row = rowAt(log, { at })
    if (row !== undefined) yield row
  }
}
