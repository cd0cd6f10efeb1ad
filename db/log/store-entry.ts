/** The one INSERT into the entries. */
import type { Entry } from '../../shared-types/entry.ts'
import { type Params, prepareRun } from '../statement.ts'
import type { EntryTable } from '../schema.ts'
import type { LogTransaction } from './append.ts'

const insert = prepareRun((db, p: Params<EntryTable>) =>
  db.insertInto('entry').values({
    desk: p('desk'),
    seq: p('seq'),
    ms: p('ms'),
    n: p('n'),
    wall: p('wall'),
    by: p('by'),
    kind: p('kind'),
    v: p('v'),
    body: p('body'),
    prev: p('prev'),
    hash: p('hash'),
  }),
)

/** Stores an entry exactly as it is sealed; `text` is its body in canonical form. */
export function storeEntry(tx: LogTransaction, entry: Entry, text: string): void {
  const { at, ...rest } = entry
  insert(tx, { ...rest, ms: at.ms, n: at.n, wall: at.wall, body: text })
}
