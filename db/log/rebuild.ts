/** Making the read tables anew from the entries, which alone are the record. */
import { granted, type Result } from '../../shared-types/result.ts'
import { type Connection, connectionOf, type ReadableLog, type WritableLog } from '../connection.ts'
import { foldEntry } from '../fold/fold.ts'
import { applyRowWrites } from '../fold/row-write.ts'
import { makeReadTables } from '../migrations/migrate.ts'
import { inTransaction } from '../transaction.ts'
import { entriesInOrder } from './read-entries.ts'

/**
 * Drops the read tables and folds every entry again, in the order of a merged log, in one
 * transaction. Answers how many entries were folded. Refuses as the medium does.
 */
export function rebuildReadTables(log: WritableLog): Result<number> {
  return inTransaction(connectionOf(log), () => granted(refold(log, connectionOf(log))))
}

/** Folds all entries of `log` into fresh read tables of `target`; the caller holds a transaction. */
export function refold(log: ReadableLog, target: Connection): number {
  makeReadTables(target)
  let folded = 0
  for (const entry of entriesInOrder(log)) {
    applyRowWrites(target, foldEntry(entry))
    folded += 1
  }
  return folded
}
