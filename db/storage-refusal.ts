/** What the medium could not do, in words for the person at the desk. */
import Database from 'better-sqlite3'
import type { Refusal, Result } from '../shared-types/result.ts'

const nothingWritten = 'Nothing of this action was written.'

const refusals: readonly (readonly [prefix: string, code: string, say: string, next: string])[] = [
  [
    'SQLITE_FULL',
    'disk-full',
    `The disk is full. ${nothingWritten}`,
    'Free some space on the disk that holds the station log, then do it again.',
  ],
  [
    'SQLITE_READONLY',
    'medium-read-only',
    `The station log lies where nothing can be written. ${nothingWritten}`,
    'Lift the write protection, or copy the log to a disk that can be written and open it there.',
  ],
  [
    'SQLITE_BUSY',
    'log-in-use',
    `Another program is writing in this station log. ${nothingWritten}`,
    'Wait a moment and do it again; if it stays so, close the other window that has this log open.',
  ],
  [
    'SQLITE_IOERR',
    'disk-failed',
    `The disk did not take the writing. ${nothingWritten}`,
    'Check that the disk or stick is still plugged in, make a backup elsewhere, then do it again.',
  ],
  [
    'SQLITE_CORRUPT',
    'torn',
    'The station log is damaged.',
    'Stop working in this file, keep it as it is, and go on from the latest backup.',
  ],
]

/** The refusal for an error of the medium; null if the error is a bug. */
export function storageRefusal(error: unknown): Refusal | null {
  if (!(error instanceof Database.SqliteError)) return null
  const found = refusals.find(([prefix]) => error.code.startsWith(prefix))
  if (found === undefined) return null
  const [, code, say, next] = found
  return { code, say, next }
}

/** Does what the medium may fail at: its failure is a refusal, any other exception is thrown on. */
export function storing<T>(act: () => Result<T>): Result<T> {
  try {
    return act()
  } catch (error) {
    const refusal = storageRefusal(error)
    if (refusal === null) throw error
    return { ok: false, refusal }
  }
}
