/** The restore drill: a backup that nobody has tried to open is only a hope. */
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import { granted, type Result } from '../shared-types/result.ts'
import type { ReadableLog } from './connection.ts'
import { openLog } from './log/open.ts'
import { outsideRefusal } from './log/open-refusals.ts'
import { countEntries, headOf } from './log/read-entries.ts'
import { verifyLog } from './log/verify.ts'

export interface Drill {
  readonly entries: number
  /** Entries of the desk that the working log has and the backup has not. */
  readonly behind: number
  /** Nothing was taken out or altered, and the tables say what the entries say. */
  readonly whole: boolean
  /** What was found wrong, in sentences. */
  readonly findings: readonly string[]
}

/**
 * Restores a backup into a folder that is gone afterwards, opens it as a desk would to go on in it, and
 * checks it from end to end. `headSeq`: how far the working log has come; null if there is none.
 *
 * Refuses as `openLog` does. The backup itself is only read.
 */
export function drillBackup(path: string, headSeq: number | null): Result<Drill> {
  const refusal = outsideRefusal(path)
  if (refusal) return refusal
  const folder = mkdtempSync(join(tmpdir(), 'duskline-drill-'))
  try {
    const copy = join(folder, basename(path))
    copyFileSync(path, copy)
    const opened = openLog(copy)
    if (!opened.ok) return opened
    return drilled(opened.value, headSeq)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

function drilled(log: ReadableLog, headSeq: number | null): Result<Drill> {
  try {
    const { whole, findings } = verifyLog(log)
    const reached = headOf(log, log.desk)?.seq ?? 0
    return granted({
      entries: countEntries(log),
      behind: Math.max(0, (headSeq ?? reached) - reached),
      whole,
      findings: findings.map(({ say }) => say),
    })
  } finally {
    log.close()
  }
}
