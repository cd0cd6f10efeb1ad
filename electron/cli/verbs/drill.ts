/** `drill BACKUP [LOG]`: would this backup bring the desk back, and how far is it behind? */
import { basename } from 'node:path'
import { type Drill, drillBackup } from '../../../db/drill.ts'
import { headOf } from '../../../db/log/read-entries.ts'
import { readLog } from '../../../db/log/read-log.ts'
import { granted, type Result } from '../../../shared-types/result.ts'
import { notDone, type Outcome, told } from '../outcome.ts'

/** Restores into a folder that is gone afterwards; backup and log are only read. */
export function drill(backup: string, log: string | undefined): Outcome {
  const head = log === undefined ? granted(null) : headSeqOf(log)
  if (!head.ok) return notDone(head.refusal)
  const drilled = drillBackup(backup, head.value)
  if (!drilled.ok) return notDone(drilled.refusal)
  const { whole, findings } = drilled.value
  const outcome = told([...findings, sentence(basename(backup), drilled.value)], drilled.value)
  if (whole) return outcome
  const say = `${basename(backup)} opens, but it is not whole.`
  const next = 'Make another backup on another disk; keep this one as it is.'
  return { ...outcome, refusal: { code: 'not-whole', say, next } }
}

function headSeqOf(path: string): Result<number | null> {
  const read = readLog(path)
  if (!read.ok) return read
  const seq = headOf(read.value, read.value.desk)?.seq ?? null
  read.value.close()
  return granted(seq)
}

function sentence(name: string, { entries, behind }: Drill): string {
  const lag = behind === 0 ? 'nothing of the desk is missing' : `${behind} entries behind the log`
  return `${name} was restored for a try: ${entries} entries, ${lag}.`
}
