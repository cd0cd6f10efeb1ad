/** `rebuild FILE`: makes the read tables anew from the entries. The entries stay as they are. */
import { basename } from 'node:path'
import { openLog } from '../../../db/log/open.ts'
import { rebuildReadTables } from '../../../db/log/rebuild.ts'
import { notDone, type Outcome, told } from '../outcome.ts'

export function rebuild(file: string): Outcome {
  const opened = openLog(file)
  if (!opened.ok) return notDone(opened.refusal)
  const log = opened.value
  try {
    const rebuilt = rebuildReadTables(log)
    if (!rebuilt.ok) return notDone(rebuilt.refusal)
    const { entries, notUnderstood } = rebuilt.value
    const later = notUnderstood === 0 ? '' : `, ${notUnderstood} of a later version left out`
    return told(
      [`${basename(file)}: tables rebuilt from ${entries} entries${later}.`],
      rebuilt.value,
    )
  } finally {
    log.close()
  }
}
