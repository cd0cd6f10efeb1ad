/** Rows of laboratory files that wait for a person, and those a person settled. */
import type { RowDoubt } from '../../shared-types/laboratory-result.ts'
import type { ReadableLog } from '../connection.ts'
import type { RowDoubtTable } from '../result-tables.ts'
import { type Params, prepareAll, prepareOne } from '../statement.ts'

/** Every row in doubt that nobody has settled, by file and line. */
export const openDoubts = prepareAll((db) =>
  db
    .selectFrom('row_doubt')
    .selectAll()
    .where('settlement', 'is', null)
    .orderBy('ms')
    .orderBy('file')
    .orderBy('line'),
)

/** What every open row in doubt names: the animal of its bag where the log knows it, and what it says. */
export const openDoubtNames = prepareAll((db) =>
  db
    .selectFrom('row_doubt')
    .leftJoin('bag', 'bag.bag', 'row_doubt.bag')
    .select(['bag.animal', 'row_doubt.number'])
    .where('row_doubt.settlement', 'is', null),
)

/** The rows settled last, the latest first. */
export const settledDoubts = prepareAll((db) =>
  db
    .selectFrom('row_doubt')
    .selectAll()
    .where('settlement', 'is not', null)
    .orderBy('settled_ms', 'desc')
    .orderBy('line')
    .limit(200),
)

const doubtRow = prepareOne((db, p: Params<{ file: string; line: number }>) =>
  db
    .selectFrom('row_doubt')
    .selectAll()
    .where('file', '=', p('file'))
    .where('line', '=', p('line')),
)

export function doubtAt(log: ReadableLog, file: string, line: number): RowDoubtTable | null {
  return doubtRow(log, { file, line }) ?? null
}

/** The open rows of one file that are in doubt for one reason. */
export const openDoubtsOf = prepareAll((db, p: Params<{ file: string; doubt: RowDoubt }>) =>
  db
    .selectFrom('row_doubt')
    .selectAll()
    .where('file', '=', p('file'))
    .where('doubt', '=', p('doubt'))
    .where('settlement', 'is', null)
    .orderBy('line'),
)

const settledLineRows = prepareAll((db, p: Params<{ file: string }>) =>
  db
    .selectFrom('row_doubt')
    .select('line')
    .where('file', '=', p('file'))
    .where('settlement', 'is not', null),
)

/** Lines of a file that a person has settled: read once more, they stay as settled. */
export function settledLines(log: ReadableLog, file: string): ReadonlySet<number> {
  return new Set(settledLineRows(log, { file }).map(({ line }) => line))
}

const openCount = prepareOne((db) =>
  db
    .selectFrom('row_doubt')
    .select((eb) => eb.fn.countAll<number>().as('count'))
    .where('settlement', 'is', null),
)

export function countOpenDoubts(log: ReadableLog): number {
  return openCount(log)?.count ?? 0
}
