/** The entries behind one animal, and the latest of one person. */
import { sql } from 'kysely'
import type { Entry } from '../../shared-types/entry.ts'
import type { DeskId, PersonId, SampleNumber } from '../../shared-types/sample-number.ts'
import { orderStamp } from '../../shared-types/stamp.ts'
import type { ReadableLog } from '../connection.ts'
import { type Params, prepareAll } from '../statement.ts'
import { rowToEntry } from '../log/read-entries.ts'

const aboutRows = prepareAll((db, p: Params<{ number: SampleNumber }>) =>
  db
    .selectFrom('entry')
    .selectAll()
    // In the words of the index `entry_about`.
    .where(
      sql<boolean>`CASE WHEN json_valid(body)
        THEN coalesce(body ->> '$.animal', body ->> '$.bag') END = ${p('number')}`,
    ),
)

/** Every entry about any of these animals or bags, oldest first. */
export function entriesAbout(log: ReadableLog, numbers: readonly SampleNumber[]): Entry[] {
  return numbers
    .flatMap((number) => aboutRows(log, { number }))
    .map(rowToEntry)
    .toSorted((a, b) => orderStamp(a.at, b.at) || a.seq - b.seq)
}

/** As far back as one looks for a person's latest entries: more than a crew writes in a minute. */
const latest = 100

const latestRows = prepareAll((db, p: Params<{ desk: DeskId }>) =>
  db
    .selectFrom('entry')
    .selectAll()
    .where('desk', '=', p('desk'))
    .orderBy('seq', 'desc')
    .orderBy('hash', 'desc')
    .limit(latest),
)

/** What a person wrote among the latest entries of this desk, oldest first. */
export function latestEntriesBy(log: ReadableLog, person: PersonId): Entry[] {
  return latestRows(log, { desk: log.desk })
    .filter(({ by }) => by === person)
    .toReversed()
    .map(rowToEntry)
}
