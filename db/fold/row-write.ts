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
  | { readonly write: 'offer'; readonly table: string; readonly row: Cells }
  | { readonly write: 'patch'; readonly table: string; readonly key: Cells; readonly values: Cells }
  | { readonly write: 'remove'; readonly table: string; readonly key: Cells }

/** Inserts a row, or replaces the one with the same primary or unique key as a whole. */
export function put<T extends ReadTable>(table: T, row: Insertable<ReadTables[T]>): RowWrite {
  return { write: 'put', table, row: row as Cells }
}

/** Inserts a row unless there is one with the same primary or unique key. */
export function offer<T extends ReadTable>(table: T, row: Insertable<ReadTables[T]>): RowWrite {
  return { write: 'offer', table, row: row as Cells }
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
  for (const write of writes) {
    const cells: unknown[] = []
    const text = writeText(write, cells)
    if (text !== null) statementOf(connection, text).run(cells)
  }
}

/** The statement of a write, its cells put into `cells` in the order of its marks; null for none. */
function writeText(write: RowWrite, cells: unknown[]): string | null {
  switch (write.write) {
    case 'put':
      return known(`put ${write.table}`, given(write.row, cells), [], putText)
    case 'offer':
      return known(`offer ${write.table}`, given(write.row, cells), [], offerText)
    case 'patch': {
      const values = given(write.values, cells)
      const key = whole(write.key, cells)
      return values.length === 0 ? null : known(`patch ${write.table}`, values, key, patchText)
    }
    case 'remove':
      return known(`remove ${write.table}`, [], whole(write.key, cells), removeText)
  }
}

type Text = (table: string, columns: readonly string[], key: readonly string[]) => string

/** A rebuild makes millions of writes of some fifty forms: each form's text is made once. */
const texts = new Map<string, string>()

function known(
  form: string,
  columns: readonly string[],
  key: readonly string[],
  textOf: Text,
): string {
  const name = `${form} ${columns.join()} ${key.join()}`
  const text = texts.get(name)
  if (text !== undefined) return text
  const made = textOf(form.slice(form.indexOf(' ') + 1), columns, key)
  texts.set(name, made)
  return made
}

/** The columns of a row; one left undefined is not named. */
function given(row: Cells, cells: unknown[]): string[] {
  const columns: string[] = []
  for (const name in row) {
    const value = row[name]
    if (value === undefined) continue
    columns.push(name)
    cells.push(value)
  }
  return columns
}

/** A key with a hole in it would touch rows nobody meant. */
function whole(key: Cells, cells: unknown[]): string[] {
  const columns = Object.keys(key)
  if (columns.length === 0 || columns.some((name) => key[name] === undefined))
    throw new TypeError(`a row write with an incomplete key: ${JSON.stringify(key)}`)
  for (const name of columns) cells.push(key[name])
  return columns
}

const quoted = (name: string) => `"${name}"`

const insertText = (or: string) => (table: string, columns: readonly string[]) => {
  const marks = columns.map(() => '?').join(', ')
  return `INSERT OR ${or} INTO ${quoted(table)} (${columns.map(quoted).join(', ')}) VALUES (${marks})`
}

const putText = insertText('REPLACE')
const offerText = insertText('IGNORE')

function patchText(table: string, values: readonly string[], key: readonly string[]): string {
  const changes = values.map((name) => `${quoted(name)} = ?`).join(', ')
  return `UPDATE ${quoted(table)} SET ${changes} WHERE ${matching(key)}`
}

function removeText(table: string, _columns: readonly string[], key: readonly string[]): string {
  return `DELETE FROM ${quoted(table)} WHERE ${matching(key)}`
}

// IS, not =, so that a key column may be null.
const matching = (key: readonly string[]) => key.map((name) => `${quoted(name)} IS ?`).join(' AND ')
