/** Opening a station log to work in it. */
import { existsSync, rmSync } from 'node:fs'
import { granted, type Result } from '../../shared-types/result.ts'
import {
  closedUnlessGranted,
  type Connection,
  connectForWriting,
  connectionOf,
  WritableLog,
} from '../connection.ts'
import { latestFormat } from '../migrations/list.ts'
import { formatOf, migrateLogTables } from '../migrations/migrate.ts'
import { inTransaction } from '../transaction.ts'
import { markFile } from './file-mark.ts'
import { newerVersion, openingOf, torn } from './open-refusals.ts'
import { refold } from './rebuild.ts'
import { isSound, ownDeskOf } from './soundness.ts'

/**
 * Opens a log for writing. A log of an older format is first copied beside itself
 * (`NAME.before-FORMAT`), then brought up to date and its read tables rebuilt.
 *
 * Refuses with `not-found`, `not-a-station-log`, `torn`, `not-readable`, `newer-version` (which
 * `readLog` can still read), or as the medium does.
 */
export function openLog(path: string): Result<WritableLog> {
  return openingOf(path, () => {
    const connection = connectForWriting(path)
    return closedUnlessGranted(connection, () => opened(connection, path))
  })
}

function opened(connection: Connection, path: string): Result<WritableLog> {
  const format = formatOf(connection)
  if (format > latestFormat) return newerVersion(path)
  const desk = isSound(connection) ? ownDeskOf(connection) : undefined
  if (desk === undefined) return torn(path)
  const log = new WritableLog(connection, path, desk, latestFormat)
  markFile(log)
  return format < latestFormat ? broughtUpToDate(log, format) : granted(log)
}

function broughtUpToDate(log: WritableLog, format: number): Result<WritableLog> {
  const connection = connectionOf(log)
  copyTo(copyName(log.path, format), connection)
  return inTransaction(connection, () => {
    migrateLogTables(connection)
    refold(log, connection)
    return granted(log)
  })
}

function copyTo(path: string, connection: Connection): void {
  try {
    connection.prepare('VACUUM INTO ?').run(path)
  } catch (error) {
    rmSync(path, { force: true })
    throw error
  }
}

/** A name that is still free: an earlier copy may be the only good one. */
function copyName(path: string, format: number): string {
  const name = `${path}.before-${format}`
  let free = name
  for (let count = 2; existsSync(free); count += 1) free = `${name}-${count}`
  return free
}
