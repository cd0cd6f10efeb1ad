/**
 * What an entry does to the read tables, as data. A fold answers with row writes and reads nothing,
 * so folding the same entries in the same order always makes the same tables.
 */
import type { Insertable, Selectable, Updateable } from 'kysely'
import type { Connection } from '../connection.ts'
import type { ReadTables } from '../read-tables.ts'
import { statementOf } from '../statement.ts'

type ReadTable = keyof ReadTables
type Cells = Readonly<Record<string, unknown>>

export type RowWrite =
  | { readonly write: 'put'; readonly table: string; readonly row: Cells }
  | { readonly write: 'patch'; readonly table: string; readonly key: Cells; readonly values: Cells }
  | { readonly write: 'remove'; readonly table: string; readonly key: Cells }

/** Inserts a row, or replaces the one with the same primary or unique key as a whole. */
export function put<T extends ReadTable>(table: T, row: Insertable<ReadTables[T]>): RowWrite {
  return { write: 'put', table, row: row as Cells }
}

/** Changes some columns of the rows with this key; no such row, no change. */
export function patch<T extends ReadTable>(
  table: T,
  key: Partial<Selectable<ReadTables[T]>>,
  values: Updateable<ReadTables[T]>,
): RowWrite {
  return { write: 'patch', table, key: key as Cells, values: values as Cells }
}

/** Takes out the rows with this key. */
export function remove<T extends ReadTable>(
  table: T,
  key: Partial<Selectable<ReadTables[T]>>,
): RowWrite {
  return { write: 'remove', table, key: key as Cells }
}

/** Carries row writes out in order, inside the caller's transaction. */
export function applyRowWrites(connection: Connection, writes: readonly RowWrite[]): void {
  for (const write of writes) applyRowWrite(connection, write)
}

function applyRowWrite(connection: Connection, write: RowWrite): void {
  switch (write.write) {
    case 'put': {
      const row = given(write.row)
      statementOf(connection, putText(write.table, names(row))).run(...cells(row))
      return
    }
    case 'patch': {
      const [key, values] = [whole(write.key), given(write.values)]
      if (values.length === 0) return
      const text = patchText(write.table, names(key), names(values))
      statementOf(connection, text).run(...cells(values), ...cells(key))
      return
    }
    case 'remove': {
      const key = whole(write.key)
      statementOf(connection, removeText(write.table, names(key))).run(...cells(key))
    }
  }
}

type Cell = readonly [name: string, value: unknown]

const names = (row: readonly Cell[]) => row.map(([name]) => name)
const cells = (row: readonly Cell[]) => row.map(([, value]) => value)

/** A column left undefined is a column not named. */
function given(row: Cells): Cell[] {
  return Object.entries(row).filter(([, value]) => value !== undefined)
}

/** A key with a hole in it would touch rows nobody meant. */
function whole(key: Cells): Cell[] {
  const row = Object.entries(key)
  if (row.length === 0 || row.some(([, value]) => value === undefined))
    throw new TypeError(`a row write with an incomplete key: ${JSON.stringify(key)}`)
  return row
}

const quoted = (name: string) => `"${name}"`

function putText(table: string, columns: readonly string[]): string {
  const marks = columns.map(() => '?').join(', ')
  return `INSERT OR REPLACE INTO ${quoted(table)} (${columns.map(quoted).join(', ')}) VALUES (${marks})`
}

function patchText(table: string, key: readonly string[], values: readonly string[]): string {
  const changes = values.map((name) => `${quoted(name)} = ?`).join(', ')
  return `UPDATE ${quoted(table)} SET ${changes} WHERE ${matching(key)}`
}

function removeText(table: string, key: readonly string[]): string {
  return `DELETE FROM ${quoted(table)} WHERE ${matching(key)}`
}

// IS, not =, so that a key column may be null.
const matching = (key: readonly string[]) => key.map((name) => `${quoted(name)} IS ?`).join(' AND ')
