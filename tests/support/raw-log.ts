/** A station log as anyone with the file could read it: past the desk, table by table. */
import { createHash } from 'node:crypto'
import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'

type Rows = readonly Record<string, unknown>[]

/** Every table of a log file with all its rows. */
export function tablesOf(path: string): ReadonlyMap<string, Rows> {
  const file = new Database(path, { readonly: true, fileMustExist: true })
  try {
    const names = file
      .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name")
      .pluck()
      .all() as string[]
    return new Map(
      names.map((name) => [name, file.prepare(`SELECT * FROM "${name}"`).all() as Rows]),
    )
  } finally {
    file.close()
  }
}

export function logsIn(folder: string): string[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.stationlog'))
    .toSorted()
}

/** What lies in a folder of logs, in one value: it changes with any row of any of them. */
export function imprintOf(folder: string): string {
  const logs = logsIn(folder).map((name) => [name, [...tablesOf(join(folder, name))]])
  return createHash('sha256').update(JSON.stringify(logs)).digest('hex')
}
