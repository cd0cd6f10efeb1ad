/** What was counted at dusk, and the explanations given. */
import type { VarianceReason } from '../../shared-types/close.ts'
import type { LocalDate } from '../../shared-types/local-date.ts'
import type { DeskId } from '../../shared-types/sample-number.ts'
import type { ReadableLog } from '../connection.ts'
import { type Params, prepareAll } from '../statement.ts'

type OfDay = Params<{ desk: DeskId; date: LocalDate }>

const countRows = prepareAll((db, p: OfDay) =>
  db
    .selectFrom('count')
    .select(['key', 'counted'])
    .where('desk', '=', p('desk'))
    .where('date', '=', p('date')),
)

/** The latest count of each thing on a date, by item key. */
export function countsByKey(log: ReadableLog, date: LocalDate): ReadonlyMap<string, number> {
  return new Map(countRows(log, { desk: log.desk, date }).map((row) => [row.key, row.counted]))
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
