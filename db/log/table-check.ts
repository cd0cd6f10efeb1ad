/** Holding a log's tables against what its entries fold to. */
import { type Connection, connectInMemory, connectionOf, type ReadableLog } from '../connection.ts'
import { latestFormat } from '../migrations/list.ts'
import { migrateLogTables, readTablesOf } from '../migrations/migrate.ts'
import { type Finding, fileFinding } from './finding.ts'
import type { Progress } from './progress.ts'
import { refold } from './rebuild.ts'
import { differingTables } from './same-tables.ts'

export interface TableCheck {
  readonly notUnderstood: number
  readonly readTables: 'equal' | 'differ'
  readonly findings: readonly Finding[]
}

/** Folds the log afresh, in memory, and compares its tables with the result. */
export function checkTables(log: ReadableLog, progress: Progress): TableCheck {
  const fresh = connectInMemory()
  try {
    migrateLogTables(fresh)
    const { notUnderstood } = fresh.transaction(() => refold(log, fresh, progress))()
    const rows = rowFindings(connectionOf(log), fresh)
    return {
      notUnderstood,
      readTables: rows.length === 0 ? 'equal' : 'differ',
      findings: [...definitionFindings(log, fresh), ...rows],
    }
  } finally {
    fresh.close()
  }
}

/** Tables, indexes and the triggers that guard the entries. A newer version may define its own. */
function definitionFindings(log: ReadableLog, fresh: Connection): Finding[] {
  if (log.format > latestFormat) return []
  if (definitions(connectionOf(log)) === definitions(fresh)) return []
  return [
    fileFinding('tables-changed', 'The tables or their guards are not as this program makes them.'),
  ]
}

function definitions(connection: Connection): string {
  const rows = connection
    .prepare(
      `SELECT type, name, sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite!_%' ESCAPE '!'
       ORDER BY type, name`,
    )
    .raw()
    .all()
  return JSON.stringify(rows)
}

function rowFindings(ours: Connection, fresh: Connection): Finding[] {
  const tables = differingTables([ours, readTablesOf(ours)], [fresh, readTablesOf(fresh)])
  if (tables.length === 0) return []
  const say = `What the screens show differs from the entries, in ${tables.join(', ')}; a rebuild puts it right.`
  return [fileFinding('read-tables-differ', say)]
}
