/** Giving a merged log the desk of the office that works on with it. */
import { basename } from 'node:path'
import { type Result, refused } from '../../shared-types/result.ts'
import { type DeskId, nobodysDesk } from '../../shared-types/sample-number.ts'
import { connectionOf, type WritableLog } from '../connection.ts'
import { openLog } from '../log/open.ts'
import { desksOf } from '../log/read-entries.ts'
import { stationsIn } from '../read/station.ts'
import { nothingToMerge } from './merge-refusals.ts'

/**
 * Opens a merged log under the desk of an office. Refuses `office-already` if one has taken it up, and
 * `desk-taken` if a desk in it has that letter: two desks must never sign alike.
 */
export function takeUpLog(path: string, desk: DeskId): Result<WritableLog> {
  const opened = openLog(path)
  if (!opened.ok) return opened
  const log = opened.value
  const refusal = whyNot(log, desk)
  if (refusal === null) connectionOf(log).prepare('UPDATE own_desk SET desk = ?').run(desk)
  log.close()
  return refusal ?? openLog(path)
}

function whyNot(log: WritableLog, desk: DeskId): Result<never> | null {
  if (log.desk !== nobodysDesk)
    return refused(
      'office-already',
      `${basename(log.path)} is the log of desk ${log.desk} already.`,
      'Open it and sign in there.',
      'file',
    )
  if (stationsIn(log).length === 0) return nothingToMerge([])
  if (desk !== nobodysDesk && !desksOf(log).includes(desk)) return null
  return refused(
    'desk-taken',
    `Desk ${desk} is in this record already.`,
    'Choose another letter for the office: it must never be one that a station or office has used.',
    'letter',
  )
}
