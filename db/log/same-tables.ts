/** Whether two databases hold the same tables with the same rows. */
import type { Connection } from '../connection.ts'

/** The names of the tables that are not the same in both, or not in both. */
export function differingTables(
  [a, aTables]: readonly [Connection, readonly string[]],
  [b, bTables]: readonly [Connection, readonly string[]],
): string[] {
  return [...new Set([...aTables, ...bTables])].filter(
    (table) => !aTables.includes(table) || !bTables.includes(table) || !sameRows(a, b, table),
  )
}

function sameRows(a: Connection, b: Connection, table: string): boolean {
  const ours = sortedRows(a, table)
  const theirs = sortedRows(b, table)
  for (const row of ours) {
    const other = theirs.next()
    if (other.done || !sameCells(row, other.value)) return finished(ours, theirs)
  }
  return theirs.next().done === true || finished(ours, theirs)
}

/** A connection is busy until its rows are read or given up. */
function finished(...rows: readonly IterableIterator<unknown>[]): false {
  for (const each of rows) each.return?.()
  return false
}

function sortedRows(connection: Connection, table: string): IterableIterator<unknown[]> {
  const statement = connection.prepare<[], unknown[]>(`SELECT * FROM "${table}"`)
  const order = statement.columns().map((_, at) => at + 1)
  return connection
    .prepare<[], unknown[]>(`SELECT * FROM "${table}" ORDER BY ${order.join(', ')}`)
    .raw()
    .iterate()
}

function sameCells(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((cell, at) => Object.is(cell, b[at]))
}
