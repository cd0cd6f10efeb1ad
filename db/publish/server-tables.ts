/** The tables of a published record: those of the log, as a PostgreSQL server keeps them. */
import { type Kysely, sql } from 'kysely'
import { type Connection, connectionOf, type ReadableLog } from '../connection.ts'
import { readTablesOf } from '../migrations/migrate.ts'
import type { Database } from '../schema.ts'

export interface Column {
  readonly name: string
  readonly type: 'text' | 'bigint' | 'double precision'
  readonly notNull: boolean
  /** Its place in the primary key, from 1; 0 if it is not in it. */
  readonly key: number
}

export interface ServerTable {
  readonly name: keyof Database
  readonly columns: readonly Column[]
}

const types = { TEXT: 'text', INTEGER: 'bigint', REAL: 'double precision' } as const

function columnsOf(connection: Connection, table: string): Column[] {
  const rows = connection.pragma(`table_info("${table}")`) as {
    name: string
    type: keyof typeof types
    notnull: 0 | 1
    pk: number
  }[]
  return rows.map(({ name, type, notnull, pk }) => ({
    name,
    type: types[type],
    notNull: notnull === 1 || pk > 0,
    key: pk,
  }))
}

/** An entry is known by desk, number and hash, which the log keeps unique without a primary key. */
function entryColumns(connection: Connection): Column[] {
  const key = ['desk', 'seq', 'hash']
  return columnsOf(connection, 'entry').map((column) => ({
    ...column,
    key: key.indexOf(column.name) + 1,
  }))
}

export function entryTable(log: ReadableLog): ServerTable {
  return { name: 'entry', columns: entryColumns(connectionOf(log)) }
}

/** The tables folded from the entries: what screens, documents and reports read. */
export function readTables(log: ReadableLog): ServerTable[] {
  const connection = connectionOf(log)
  return readTablesOf(connection).map((name) => ({
    name: name as ServerTable['name'],
    columns: columnsOf(connection, name),
  }))
}

export function keyOf({ columns }: ServerTable): string[] {
  return columns
    .filter(({ key }) => key > 0)
    .toSorted((a, b) => a.key - b.key)
    .map(({ name }) => name)
}

/** Makes a table on the server unless it is there. */
export async function makeTable(server: Kysely<Database>, table: ServerTable): Promise<void> {
  let making = server.schema.createTable(table.name).ifNotExists()
  for (const { name, type, notNull } of table.columns)
    making = making.addColumn(name, sql.raw(type), (column) =>
      notNull ? column.notNull() : column,
    )
  await making.addPrimaryKeyConstraint(`${table.name}_key`, keyOf(table) as never).execute()
}
