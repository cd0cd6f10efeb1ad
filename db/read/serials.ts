/** The highest serial a desk has given out for each thing it numbers. */
import { sql } from 'kysely'
import { type DeskId, numberParts, type SampleNumber } from '../../shared-types/sample-number.ts'
import type { ReadableLog } from '../connection.ts'
import { type Params, prepareOne } from '../statement.ts'

/** What a desk numbers, each counted from 1. A kit's bags, card and stub share its serial. */
export type Numbered = 'animal' | 'kit' | 'cooler' | 'person' | 'handoff'

/** Numbers of one desk sort by serial, so the last one is a single step into the primary key. */
function lastOf(table: Numbered) {
  return prepareOne((db, p: Params<{ desk: DeskId }>) =>
    db
      .selectFrom(table)
      .select(sql<SampleNumber>`${sql.ref(table)}`.as('number'))
      .where(
        sql<boolean>`${sql.ref(table)} > ${p('desk')} AND ${sql.ref(table)} < ${p('desk')} || '~'`,
      )
      .orderBy(sql`${sql.ref(table)}`, 'desc')
      .limit(1),
  )
}

const last = {
  animal: lastOf('animal'),
  kit: lastOf('kit'),
  cooler: lastOf('cooler'),
  person: lastOf('person'),
  handoff: lastOf('handoff'),
}

/** The serial to give out next. Inside a transaction nobody else can be given the same one. */
export function nextSerial(log: ReadableLog, what: Numbered): number {
  const row = last[what](log, { desk: log.desk })
  return row ? numberParts(row.number).serial + 1 : 1
}
