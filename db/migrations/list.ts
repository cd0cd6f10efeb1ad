/** All steps in order. A list in code, not a folder scan: the program may run from an archive. */
import { entryLog } from './0010-entry-log.ts'
import { keptSafe } from './0015-kept-safe.ts'
import { readTables } from './0020-read-tables.ts'
import type { Migration } from './migration.ts'

export const migrations: readonly Migration[] = [entryLog, keptSafe, readTables]

/** The format this version writes. */
export const latestFormat = Math.max(...migrations.map((step) => step.number))
