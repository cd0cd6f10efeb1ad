/** Beginning a new station log. */
import { closeSync, openSync, rmSync } from 'node:fs'
import { basename } from 'node:path'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import type { DeskId } from '../../shared-types/sample-number.ts'
import {
  applicationId,
  closedUnlessGranted,
  type Connection,
  connectForWriting,
  WritableLog,
} from '../connection.ts'
import { latestFormat } from '../migrations/list.ts'
import { makeReadTables, migrateLogTables } from '../migrations/migrate.ts'
import { storing } from '../storage-refusal.ts'
import { inTransaction } from '../transaction.ts'
import { markFile } from './file-mark.ts'

/**
 * Makes an empty log for a desk. Never writes over a file: refuses with `file-exists`, with
 * `not-found` if the folder is missing, or as the medium does.
 */
export function createLog(path: string, desk: DeskId): Result<WritableLog> {
  const claimed = claim(path)
  if (!claimed.ok) return claimed
  let made = false
  try {
    const begun = storing(() => beginLog(path, desk))
    made = begun.ok
    return begun
  } finally {
    if (!made) rmSync(path)
  }
}

function beginLog(path: string, desk: DeskId): Result<WritableLog> {
  const connection = connectForWriting(path)
  return closedUnlessGranted(connection, () => {
    const log = new WritableLog(connection, path, desk, latestFormat)
    const begun = inTransaction(connection, () => granted(makeTables(connection, desk)))
    if (!begun.ok) return begun
    // Else the mark in the file's header would wait in the WAL file, and a copy would look foreign.
    connection.pragma('wal_checkpoint(TRUNCATE)')
    markFile(log)
    return granted(log)
  })
}

/** Takes the name on the disk, so that two programs cannot both believe they made the file. */
function claim(path: string): Result<void> {
  try {
    closeSync(openSync(path, 'wx'))
    return granted(undefined)
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : undefined
    if (code === 'EEXIST') return taken(path)
    if (code === 'ENOENT') return noFolder(path)
    if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS') return noWriting(path)
    throw error
  }
}

function taken(path: string): Result<never> {
  return refused(
    'file-exists',
    `There is already a file ${basename(path)}.`,
    'Open that log, or choose another name for the new one.',
  )
}

function noFolder(path: string): Result<never> {
  return refused(
    'not-found',
    `The folder for ${basename(path)} is not there.`,
    'Choose a folder that exists, or plug in the disk it is on.',
  )
}

function noWriting(path: string): Result<never> {
  return refused(
    'medium-read-only',
    `Nothing can be written where ${basename(path)} should go.`,
    'Choose another folder, or lift the write protection.',
  )
}

/** The tables of an empty log; the caller holds a transaction. */
export function makeTables(connection: Connection, desk: DeskId): void {
  connection.pragma(`application_id = ${applicationId}`)
  migrateLogTables(connection)
  makeReadTables(connection)
  connection.prepare('INSERT INTO own_desk (one, desk) VALUES (1, ?)').run(desk)
}
