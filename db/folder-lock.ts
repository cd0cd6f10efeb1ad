/** One program at a time over a folder of station logs, whichever window it shows. */
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { granted, type Result, refused } from '../shared-types/result.ts'

/** The file whose lock is held; it stays empty. */
const lockName = '.duskline-open'

/** Lets go of the folder. */
export type LetGo = () => void

/**
 * Takes a folder for this program. The operating system holds the lock, so it ends with the program
 * however that ends, and no stale mark is left for a person to clear away.
 *
 * Refuses with `folder-in-use`. A medium that cannot be written is granted: nothing is written there.
 */
export function holdFolder(folder: string): Result<LetGo> {
  const path = join(folder, lockName)
  try {
    const lock = new Database(path, { timeout: 0 })
    return holdOrClose(lock)
  } catch (error) {
    if (isBusy(error)) return inUse()
    if (error instanceof Database.SqliteError) return granted(() => {})
    throw error
  }
}

function holdOrClose(lock: Database.Database): Result<LetGo> {
  try {
    // In memory: a journal file beside it would look like something to keep.
    lock.pragma('journal_mode = MEMORY')
    lock.exec('BEGIN EXCLUSIVE')
    return granted(() => void lock.close())
  } catch (error) {
    lock.close()
    throw error
  }
}

function isBusy(error: unknown): boolean {
  return error instanceof Database.SqliteError && error.code.startsWith('SQLITE_BUSY')
}

function inUse(): Result<never> {
  return refused(
    'folder-in-use',
    'Duskline is already open on this folder of station logs.',
    'Go to its window, or close it and start again.',
  )
}
