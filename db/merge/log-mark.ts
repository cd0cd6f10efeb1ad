/** Whether a log is one desk's own or one that offices merge into. */
import { nobodysDesk } from '../../shared-types/sample-number.ts'
import type { ReadableLog } from '../connection.ts'
import { stationOf } from '../read/station.ts'
import { prepareOne } from '../statement.ts'

const anyStation = prepareOne((db) => db.selectFrom('station').select('practice').limit(1))

/**
 * `station`: the log of a station desk. Else a merged log, and whether it is a record of practice;
 * null while it holds nothing.
 */
export function markOfLog(log: ReadableLog): 'station' | boolean | null {
  if (log.desk !== nobodysDesk && stationOf(log)?.office !== true) return 'station'
  const row = anyStation(log)
  return row === undefined ? null : row.practice === 1
}
