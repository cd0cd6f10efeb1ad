/** All or nothing: the one way anything is written. */
import type { Refusal, Result } from '../shared-types/result.ts'
import type { Connection } from './connection.ts'
import { statementOf } from './statement.ts'
import { storageRefusal } from './storage-refusal.ts'

/**
 * Runs `act` in one IMMEDIATE transaction. Granted: committed and on disk when this returns.
 * Refused, or the medium failed: nothing written. Any other exception: nothing written, and thrown.
 */
export function inTransaction<T>(connection: Connection, act: () => Result<T>): Result<T> {
  try {
    statementOf(connection, 'BEGIN IMMEDIATE').run()
    const result = act()
    statementOf(connection, result.ok ? 'COMMIT' : 'ROLLBACK').run()
    return result
  } catch (error) {
    // SQLite has already rolled back by itself after some failures of the disk.
    if (connection.inTransaction) statementOf(connection, 'ROLLBACK').run()
    return { ok: false, refusal: refusalOrThrow(error) }
  }
}

function refusalOrThrow(error: unknown): Refusal {
  const refusal = storageRefusal(error)
  if (refusal === null) throw error
  return refusal
}
