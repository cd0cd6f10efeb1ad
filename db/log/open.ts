/** Opening a station log to work in it. */
import { existsSync } from 'node:fs'
import { granted, type Result } from '../../shared-types/result.ts'
import { type Connection, connectForWriting, connectionOf, WritableLog } from '../connection.ts'
import { latestFormat } from '../migrations/list.ts'
import { formatOf, migrateLogTables } from '../migrations/migrate.ts'
import { inTransaction } from '../transaction.ts'
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
    return closingUnlessGranted(connection, () => opened(connection, path))
  })
}

function closingUnlessGranted<T>(connection: Connection, open: () => Result<T>): Result<T> {
  let kept = false
  try {
    const result = open()
    kept = result.ok
    return result
  } finally {
    if (!kept) connection.close()
  }
}

function opened(connection: Connection, path: string): Result<WritableLog> {
  const format = formatOf(connection)
  if (format > latestFormat) return newerVersion(path)
  const desk = isSound(connection) ? ownDeskOf(connection) : undefined
  if (desk === undefined) return torn(path)
  const log = new WritableLog(connection, path, desk, latestFormat)
  return format < latestFormat ? broughtUpToDate(log, format) : granted(log)
}

function broughtUpToDate(log: WritableLog, format: number): Result<WritableLog> {
  const connection = connectionOf(log)
  connection.prepare('VACUUM INTO ?').run(copyName(log.path, format))
  return inTransaction(connection, () => {
    migrateLogTables(connection)
    refold(log, connection)
    return granted(log)
  })
}

/** A name that is still free: an earlier copy may be the only good one. */
function copyName(path: string, format: number): string {
  const name = `${path}.before-${format}`
  let free = name
  for (let count = 2; existsSync(free); count += 1) free = `${name}-${count}`
  return free
}
