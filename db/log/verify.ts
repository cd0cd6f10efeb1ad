/** Checking a log: that nothing was taken out or altered, and that its tables say what its entries say. */
import { type Connection, connectionOf, type ReadableLog } from '../connection.ts'
import { ChainWalk, type DeskReport } from './chain-walk.ts'
import { type Finding, fileFinding } from './finding.ts'
import { type Progress, quietly } from './progress.ts'
import { countEntries } from './read-entries.ts'
import { storedEntries } from './stored-entries.ts'
import { checkTables, type TableCheck } from './table-check.ts'

export interface LogReport {
  /** Nothing was taken out, altered or damaged. A fork does not count: both branches are kept. */
  readonly whole: boolean
  readonly entries: number
  readonly desks: readonly DeskReport[]
  /** Entries of a later version: kept and passed on, but shown in no table. */
  readonly notUnderstood: number
  /** `not-compared` where entries were altered: what would be folded from them proves nothing. */
  readonly readTables: TableCheck['readTables'] | 'not-compared'
  readonly findings: readonly Finding[]
}

/**
 * Checks a log from end to end: file, tables, every chain, and the read tables against a fresh fold.
 * Takes some seconds for some hundred thousand entries and changes nothing; `progress` runs through
 * the entries twice.
 */
export function verifyLog(log: ReadableLog, progress: Progress = quietly): LogReport {
  const connection = connectionOf(log)
  // One transaction, so that a desk that is writing meanwhile is seen as it stood at one moment.
  return connection.transaction(() => checked(log, connection, progress))()
}

function checked(log: ReadableLog, connection: Connection, progress: Progress): LogReport {
  const entries = countEntries(log)
  const chains = walked(log, (done) => progress(done, 2 * entries))
  const tables = chains.findings.some(({ what }) => what === 'altered')
    ? ({ notUnderstood: 0, readTables: 'not-compared', findings: [] } as const)
    : checkTables(log, (done) => progress(entries + done, 2 * entries))
  const { desks } = chains
  const findings = [...fileFindings(connection), ...chains.findings, ...tables.findings]
  return { ...tables, whole: findings.every(isFork), entries, desks, findings }
}

const isFork = ({ what }: Finding) => what === 'fork'

function walked(log: ReadableLog, progress: (done: number) => void): ChainWalk {
  const walk = new ChainWalk()
  let done = 0
  for (const entry of storedEntries(log)) {
    walk.see(entry)
    done += 1
    progress(done)
  }
  return walk
}

function fileFindings(connection: Connection): Finding[] {
  if (connection.pragma('integrity_check(1)', { simple: true }) === 'ok') return []
  return [fileFinding('damaged-file', 'The file is damaged: its pages do not fit together.')]
}
