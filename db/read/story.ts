/** The entries behind one animal. */
import { sql } from 'kysely'
import type { Entry } from '../../shared-types/entry.ts'
import type { SampleNumber } from '../../shared-types/sample-number.ts'
import { orderStamp } from '../../shared-types/stamp.ts'
import type { ReadableLog } from '../connection.ts'
import { type Params, prepareAll } from '../statement.ts'

const about = sql`coalesce(body ->> '$.animal', body ->> '$.bag')`

const aboutRows = prepareAll((db, p: Params<{ number: SampleNumber }>) =>
  db
    .selectFrom('entry')
    .selectAll()
    .where(sql<boolean>`${about} = ${p('number')} AND ${about} IS NOT NULL`),
)

/** Every entry about any of these animals or bags, oldest first. */
export function entriesAbout(log: ReadableLog, numbers: readonly SampleNumber[]): Entry[] {
  return numbers
    .flatMap((number) => aboutRows(log, { number }))
    .map(({ ms, n, wall, body, ...rest }) => ({
      ...rest,
      at: { ms, n, wall },
      body: JSON.parse(body) as Entry['body'],
    }))
    .toSorted((a, b) => orderStamp(a.at, b.at) || a.seq - b.seq)
}
