/** Making the read tables anew from the entries, which alone are the record. */
import { granted, type Result } from '../../shared-types/result.ts'
import { type Connection, connectionOf, type ReadableLog, type WritableLog } from '../connection.ts'
import { foldKnown, understood } from '../fold/fold.ts'
import type { KnownEntry } from '../../shared-types/entry.ts'
import { RowBuffer } from '../fold/row-buffer.ts'
import type { RowWrite } from '../fold/row-write.ts'
import { makeReadTables, withoutIndexes } from '../migrations/migrate.ts'
import { inTransaction } from '../transaction.ts'
import { quietly, type Progress } from './progress.ts'
import { countEntries, entriesInOrder } from './read-entries.ts'

export interface Refolded {
  readonly entries: number
  /** Entries of a later version: kept and passed on, but shown in no table. */
  readonly notUnderstood: number
}

/**
 * Drops the read tables and folds every entry again, in the order of a merged log, in one
 * transaction. Refuses as the medium does; the tables are then as they were.
 */
export function rebuildReadTables(log: WritableLog, progress?: Progress): Result<Refolded> {
  return inTransaction(connectionOf(log), () => granted(refold(log, connectionOf(log), progress)))
}

/** Folds all entries of `log` into fresh read tables of `target`; the caller holds a transaction. */
export function refold(
  log: ReadableLog,
  target: Connection,
  progress: Progress = quietly,
): Refolded {
  const folding = refoldSteps(log, target)
  const total = countEntries(log)
  for (let step = folding.next(); ; step = folding.next()) {
    if (step.done === true) return step.value
    progress(step.value, total)
  }
}

export interface Folding {
  /** What looks on while entries are folded. */
  readonly witness?: (entry: KnownEntry, writes: readonly RowWrite[]) => void
  /** The tables are only copied from: their indexes are not made. */
  readonly isPart?: boolean
}

/** The same, entry by entry: tells how many are folded, so that other work can go on in between. */
export function* refoldSteps(
  log: ReadableLog,
  target: Connection,
  { witness, isPart }: Folding = {},
): Generator<number, Refolded> {
  makeReadTables(target)
  const putIndexesBack = withoutIndexes(target)
  const buffer = new RowBuffer(target)
  let [entries, notUnderstood] = [0, 0]
  for (const entry of entriesInOrder(log)) {
    const known = understood(entry)
    if (known === null) notUnderstood += 1
    else {
      const writes = foldKnown(known)
      witness?.(known, writes)
      buffer.apply(writes)
    }
    entries += 1
    yield entries
  }
  buffer.flush()
  if (isPart !== true) putIndexesBack()
  return { entries, notUnderstood }
}
