/**
 * Row writes of a long fold, kept back and written many rows at a time. Most rows are changed again
 * soon after they are made (an animal is assigned, then finished), so each reaches the disk once. What
 * ends up in the tables is what `applyRowWrites` would have left, write by write.
 */
import type { Statement } from 'better-sqlite3'
import type { Connection } from '../connection.ts'
import { applyRowWrites, type RowWrite } from './row-write.ts'

type Cells = Readonly<Record<string, unknown>>

/** Rows kept back in one table before they are written: some megabytes at most. */
const mostKept = 2000

/** Rows written by one statement. */
const perStatement = 32

export class RowBuffer {
  readonly #connection: Connection
  readonly #tables = new Map<string, TableBuffer | null>()

  constructor(connection: Connection) {
    this.#connection = connection
  }

  /** Takes writes in, in order; they are in the tables for certain after `flush` only. */
  apply(writes: readonly RowWrite[]): void {
    for (const write of writes) {
      const table = this.#tableOf(write.table)
      if (table?.take(write)) continue
      table?.flush()
      applyRowWrites(this.#connection, [write])
    }
  }

  flush(): void {
    for (const table of this.#tables.values()) table?.flush()
  }

  /** Null for a table whose rows cannot be kept back. */
  #tableOf(name: string): TableBuffer | null {
    const known = this.#tables.get(name)
    if (known !== undefined) return known
    const made = TableBuffer.of(this.#connection, name)
    this.#tables.set(name, made)
    return made
  }
}

interface Column {
  readonly name: string
  readonly pk: number
  readonly dflt_value: string | null
}

class TableBuffer {
  readonly #insertOne: Statement<unknown[]>
  readonly #insertMany: Statement<unknown[]>
  readonly #isThere: Statement<unknown[]>
  readonly #placeOf: ReadonlyMap<string, number>
  readonly #key: readonly string[]
  readonly #empty: readonly unknown[]
  readonly #rows = new Map<string, unknown[]>()

  /** Null where a row left out of a write would not be null, or another key than the primary counts. */
  static of(connection: Connection, table: string): TableBuffer | null {
    const columns = connection.pragma(`table_info("${table}")`) as Column[]
    const indexes = connection.pragma(`index_list("${table}")`) as { origin: string }[]
    const isPlain =
      columns.some(({ pk }) => pk > 0) &&
      columns.every(({ dflt_value: fallback }) => fallback === null) &&
      indexes.every(({ origin }) => origin !== 'u')
    return isPlain ? new TableBuffer(connection, table, columns) : null
  }

  private constructor(connection: Connection, table: string, columns: readonly Column[]) {
    const insert = (rows: number) => {
      const row = `(${columns.map(() => '?').join(', ')})`
      const values = Array.from({ length: rows }, () => row).join(', ')
      return connection.prepare<unknown[]>(`INSERT OR REPLACE INTO "${table}" VALUES ${values}`)
    }
    this.#insertOne = insert(1)
    this.#insertMany = insert(perStatement)
    this.#empty = columns.map(() => null)
    this.#placeOf = new Map(columns.map(({ name }, place) => [name, place]))
    this.#key = columns
      .filter(({ pk }) => pk > 0)
      .toSorted((a, b) => a.pk - b.pk)
      .map(({ name }) => name)
    const key = this.#key.map((name) => `"${name}" = ?`).join(' AND ')
    this.#isThere = connection.prepare<unknown[]>(`SELECT 1 FROM "${table}" WHERE ${key}`)
  }

  /** Whether the write is taken in; else it is for the table itself, once this buffer is flushed. */
  take(write: RowWrite): boolean {
    switch (write.write) {
      case 'put':
        return this.#put(write.row)
      case 'offer':
        return this.#offer(write.row)
      case 'patch':
        return this.#patch(write.key, write.values)
      case 'remove':
        return false
    }
  }

  #put(row: Cells): boolean {
    const key = this.#keyIn(row)
    if (key === null) return false
    const cells = this.#empty.slice()
    this.#change(cells, row)
    this.#rows.set(key, cells)
    if (this.#rows.size >= mostKept) this.flush()
    return true
  }

  /** Nothing happens where there is such a row, kept back or in the table. */
  #offer(row: Cells): boolean {
    const key = this.#keyIn(row)
    if (key === null) return false
    if (this.#rows.has(key)) return true
    const isThere = this.#isThere.get(this.#key.map((name) => row[name])) !== undefined
    return isThere || this.#put(row)
  }

  #patch(key: Cells, values: Cells): boolean {
    const found = this.#keyIn(key)
    if (found === null || this.#key.some((name) => values[name] !== undefined)) return false
    const cells = this.#rows.get(found)
    if (cells === undefined) return false
    if (this.#matches(cells, key)) this.#change(cells, values)
    return true
  }

  #matches(cells: readonly unknown[], key: Cells): boolean {
    return Object.keys(key).every((name) => cells[this.#place(name)] === key[name])
  }

  #change(cells: unknown[], values: Cells): void {
    for (const name in values) {
      const value = values[name]
      if (value !== undefined) cells[this.#place(name)] = value
    }
  }

  #place(name: string): number {
    const place = this.#placeOf.get(name)
    if (place === undefined) throw new TypeError(`no column ${name}`)
    return place
  }

  /** The primary key as text; null if a part of it is not given. */
  #keyIn(row: Cells): string | null {
    let text = ''
    for (const name of this.#key) {
      const part = row[name]
      if (typeof part !== 'string' && typeof part !== 'number') return null
      text += `${part}\u0000`
    }
    return text
  }

  flush(): void {
    const rows = [...this.#rows.values()]
    this.#rows.clear()
    const whole = rows.length - (rows.length % perStatement)
    for (let at = 0; at < whole; at += perStatement)
      this.#insertMany.run(rows.slice(at, at + perStatement).flat())
    for (const row of rows.slice(whole)) this.#insertOne.run(row)
  }
}
