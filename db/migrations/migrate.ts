/** Carrying out the steps. The caller holds a transaction. */
import type { Connection } from '../connection.ts'
import { latestFormat, migrations } from './list.ts'

const logTables = ['entry', 'own_desk', 'lease', 'seal_key', 'contact', 'unproved', 'pin']

/** The number of the last step that was carried out on this file. */
export function formatOf(connection: Connection): number {
  return connection.pragma('user_version', { simple: true }) as number
}

/** Carries out the steps on the log's own tables that this file has not seen yet. */
export function migrateLogTables(connection: Connection): void {
  const format = formatOf(connection)
  for (const step of migrations)
    if (step.makes === 'log' && step.number > format) step.up(connection)
  if (format < latestFormat) connection.pragma(`user_version = ${latestFormat}`)
}

/** Makes the read tables anew, empty, whatever they were before. */
export function makeReadTables(connection: Connection): void {
  // A virtual table goes first and takes its hidden tables along.
  for (const name of readTablesOf(connection))
    connection.exec(`DROP TABLE IF EXISTS "${name.replaceAll('"', '""')}"`)
  for (const step of migrations) if (step.makes === 'read-tables') step.up(connection)
}

/** The names of the tables that are not the log's own. */
export function readTablesOf(connection: Connection): string[] {
  const marks = logTables.map(() => '?').join(', ')
  return connection
    .prepare<string[], string>(
      `SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite!_%' ESCAPE '!'
       AND name NOT IN (${marks}) ORDER BY sql LIKE 'CREATE VIRTUAL%' DESC, name`,
    )
    .pluck()
    .all(...logTables)
}

/** A fold finds rows by this one (a bag that is discarded), so it must stand while entries are folded. */
const indexesForFolding = ['tissue_in_bag']

/**
 * Takes the indexes of the read tables away; answers with how to put them back. Made once over all
 * rows, they cost a fraction of what they cost row by row.
 */
export function withoutIndexes(connection: Connection): () => void {
  const indexes = indexesOf(connection)
  for (const { name } of indexes) connection.exec(`DROP INDEX "${name}"`)
  return () => {
    for (const { sql } of indexes) connection.exec(sql)
  }
}

function indexesOf(connection: Connection): { name: string; sql: string }[] {
  const apart = [...logTables, ...indexesForFolding]
  const marks = apart.map(() => '?').join(', ')
  return connection
    .prepare<string[], { name: string; sql: string }>(
      `SELECT name, sql FROM sqlite_schema WHERE type = 'index' AND sql IS NOT NULL
       AND tbl_name NOT IN (${marks}) AND name NOT IN (${marks})`,
    )
    .all(...apart, ...apart)
}
