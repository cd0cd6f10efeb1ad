/** What was counted at dusk, the explanations given, and the note to the next lead. */
import type { VarianceReason } from '../../shared-types/close.ts'
import type { LocalDate } from '../../shared-types/local-date.ts'
import type { BagNumber, DeskId } from '../../shared-types/sample-number.ts'
import type { ReadableLog } from '../connection.ts'
import { type Params, prepareAll, prepareOne } from '../statement.ts'

type OfDay = Params<{ desk: DeskId; date: LocalDate }>

const countRows = prepareAll((db, p: OfDay) =>
  db
    .selectFrom('count')
    .select(['key', 'counted', 'bags'])
    .where('desk', '=', p('desk'))
    .where('date', '=', p('date')),
)

/** A count as it stands; `bags` where a cooler was counted by scanning. */
export interface Count {
  readonly counted: number
  readonly bags: readonly BagNumber[] | null
}

/** The latest count of each thing on a date, by item key. */
export function countsByKey(log: ReadableLog, date: LocalDate): ReadonlyMap<string, Count> {
  return new Map(
    countRows(log, { desk: log.desk, date }).map(({ key, counted, bags }) => [
      key,
      { counted, bags: bags === null ? null : (JSON.parse(bags) as BagNumber[]) },
    ]),
  )
}

const tryRows = prepareAll((db, p: OfDay) =>
  db
    .selectFrom('count_try')
    .leftJoin('person', 'person.person', 'count_try.by')
    .select(['count_try.key', 'count_try.counted', 'count_try.ms', 'person.name as by'])
    .where('count_try.desk', '=', p('desk'))
    .where('count_try.date', '=', p('date'))
    .orderBy('count_try.ms', 'desc'),
)

/** Every count of a date with who made it, the latest first. */
export function countTries(
  log: ReadableLog,
  date: LocalDate,
): { key: string; counted: number; ms: number; by: string }[] {
  return tryRows(log, { desk: log.desk, date }).map((row) => ({ ...row, by: row.by ?? '' }))
}

const noteRow = prepareOne((db, p: Params<{ desk: DeskId }>) =>
  db
    .selectFrom('handover')
    .leftJoin('person', 'person.person', 'handover.by')
    .select(['handover.date', 'handover.words', 'handover.ms', 'person.name as by'])
    .where('handover.desk', '=', p('desk'))
    .orderBy('handover.date', 'desc')
    .limit(1),
)

/** The note of the last day that has one, or null. */
export function latestNote(
  log: ReadableLog,
): { date: LocalDate; words: string; ms: number; by: string } | null {
  const row = noteRow(log, { desk: log.desk })
  return row ? { ...row, by: row.by ?? '' } : null
}

/** Why a count differed: it holds for these two numbers only. */
export interface Explanation {
  readonly expected: number
  readonly counted: number
  readonly reason: VarianceReason
  readonly words: string
}

const varianceRows = prepareAll((db, p: OfDay) =>
  db
    .selectFrom('variance')
    .select(['key', 'expected', 'counted', 'reason', 'words'])
    .where('desk', '=', p('desk'))
    .where('date', '=', p('date')),
)

/** The latest explanation of each thing on a date, by item key. */
export function explanationsByKey(
  log: ReadableLog,
  date: LocalDate,
): ReadonlyMap<string, Explanation> {
  return new Map(
    varianceRows(log, { desk: log.desk, date }).map(({ key, ...explanation }) => [
      key,
      explanation,
    ]),
  )
}
