/** A station log as anyone with the file could read it: past the desk, table by table. */
import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
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
  const hash = createHash('sha256')
  for (const name of logsIn(folder)) hash.update(name).update(imprintOfFile(join(folder, name)))
  return hash.digest('hex')
}

function imprintOfFile(path: string): string | Buffer {
  try {
    return JSON.stringify([...tablesOf(path)])
  } catch (error) {
    // A torn or foreign file has no tables: its bytes stand for it.
    if (error instanceof Database.SqliteError) return readFileSync(path)
    throw error
  }
}
