/** All or nothing: the one way anything is written. */
import type { Result } from '../shared-types/result.ts'
import type { Connection } from './connection.ts'
import { statementOf } from './statement.ts'
import { storing } from './storage-refusal.ts'

/**
 * Runs `act` in one IMMEDIATE transaction. Granted: committed and on disk when this returns.
 * Refused, or the medium failed: nothing written. Any other exception: nothing written, and thrown.
 */
export function inTransaction<T>(connection: Connection, act: () => Result<T>): Result<T> {
  // Rolling the inner one back would take the outer one along.
  if (connection.inTransaction) throw new Error('an action was begun within an action')
  return storing(() => {
    try {
      return committed(connection, act)
    } finally {
      // SQLite has already rolled back by itself after some failures of the disk.
      if (connection.inTransaction) statementOf(connection, 'ROLLBACK').run()
    }
  })
}

function committed<T>(connection: Connection, act: () => Result<T>): Result<T> {
  statementOf(connection, 'BEGIN IMMEDIATE').run()
  const result = act()
  if (result.ok) statementOf(connection, 'COMMIT').run()
  return result
}
