/** Whether a log is one desk's own or one that offices merge into. */
import { nobodysDesk } from '../../shared-types/sample-number.ts'
import { connectionOf, type ReadableLog } from '../connection.ts'
import { stationOf } from '../read/station.ts'
import { practiceOf } from './practice-mark.ts'

/**
 * `station`: the log of a station desk. Else a merged log, and whether it is a record of practice;
 * null while it holds nothing.
 */
export function markOfLog(log: ReadableLog): 'station' | boolean | null {
  if (log.desk !== nobodysDesk && stationOf(log)?.office !== true) return 'station'
  return practiceOf(connectionOf(log))
}
