/** `verify FILE`: was anything taken out or altered, and do the tables say what the entries say? */
import { basename } from 'node:path'
import { readLog } from '../../../db/log/read-log.ts'
import { type LogReport, verifyLog } from '../../../db/log/verify.ts'
import type { Refusal } from '../../../shared-types/result.ts'
import { notDone, type Outcome, told } from '../outcome.ts'

/** Changes nothing. A log that is not whole is refused, with everything found in the answer. */
export function verify(file: string): Outcome {
  const opened = readLog(file)
  if (!opened.ok) return notDone(opened.refusal)
  const log = opened.value
  try {
    const report = verifyLog(log)
    const findings = report.findings.map(({ say }) => say)
    const outcome = told([...findings, ...summary(basename(file), report)], report)
    return report.whole
      ? outcome
      : { ...outcome, refusal: notWhole(basename(file), findings.length) }
  } finally {
    log.close()
  }
}

function summary(name: string, { whole, entries, desks, notUnderstood }: LogReport): string[] {
  const of = desks.map(({ desk }) => desk).join(', ')
  const later =
    notUnderstood === 0
      ? []
      : [`${notUnderstood} of them are of a later version: kept, but shown in no table.`]
  if (!whole) return later
  return [`${name} is whole: ${entries} entries of ${of}, nothing taken out or altered.`, ...later]
}

function notWhole(name: string, findings: number): Refusal {
  return {
    code: 'not-whole',
    say: `${name} is not whole: ${findings} ${findings === 1 ? 'thing was' : 'things were'} found wrong with it.`,
    next: 'Keep the file as it is and compare it with a backup. If only the tables differ from the entries, rebuild them.',
  }
}
