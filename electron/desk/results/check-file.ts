/** A laboratory's file checked against a log that is only read: what reading it in would bring. */
import type { ReadableLog } from '../../../db/connection.ts'
import { readingOf, resultFiles } from '../../../db/read/results.ts'
import { stationOf } from '../../../db/read/station.ts'
import { type Result, refused } from '../../../shared-types/result.ts'
import { type CheckedRows, checkRows } from '../../station/results/result-check.ts'
import { readRows } from '../../station/results/result-rows.ts'
import { BroughtFile } from './brought.ts'
import { recordSeen } from './record-seen.ts'

/**
 * By the reading with which the log read this laboratory's last file; without a name, the last file of
 * any. Refuses `no-reading-known` for a laboratory whose files were never read in.
 */
export async function checkResultFile(
  log: ReadableLog,
  given: { readonly name: string; readonly bytes: Uint8Array; readonly laboratory: string | null },
  now: number,
): Promise<Result<CheckedRows>> {
  const [last] = resultFiles(log)
  const laboratory = given.laboratory ?? last?.laboratory ?? ''
  const reading = readingOf(log, laboratory)
  if (reading === null) return noReadingKnown(laboratory)
  const file = new BroughtFile(given.name)
  file.add(given.bytes)
  const table = await file.table(reading.table)
  if (!table.ok) return table
  const read = readRows(table.value, reading)
  if (!read.ok) return read
  const zone = stationOf(log)?.zone ?? 'UTC'
  return checkRows(read.value, recordSeen(log, zone, now))
}

function noReadingKnown(laboratory: string): Result<never> {
  return refused(
    'no-reading-known',
    laboratory === ''
      ? 'No laboratory file was read into this log yet.'
      : `No file of ${laboratory} was read into this log yet.`,
    'Read the first one in on the results screen, where you say which column is what.',
  )
}
