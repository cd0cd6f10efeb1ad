/** What was recorded about a desk's day after it was first closed. */
import type { ReadableLog } from '../../db/connection.ts'
import { amendmentsOfClosedDays } from '../../db/read/disputes.ts'
import { grouped } from '../../shared-types/sample-number.ts'
import type { DayRecord, StationRecord } from '../../shared-types/station.ts'
import { localDateTime } from '../station/local-time.ts'
import { amendmentsOf } from './close-sheet-parts.ts'

/** One sentence each: what came between the first close and the last, and corrections since. */
export function amendedAfter(
  log: ReadableLog,
  { desk, zone }: StationRecord,
  day: DayRecord,
): string[] {
  const between = amendmentsOf(log, day, zone, desk).map(
    ({ at, by, words }) => `${at}${by === '' ? '' : `, ${by}`}: ${words}`,
  )
  const since = amendmentsOfClosedDays(log)
    .filter((each) => each.desk === desk && each.date === day.date)
    .filter(({ wall }) => wall > (day.closedMs ?? Number.POSITIVE_INFINITY))
    .map(
      ({ animal, wall, reason }) =>
        `${localDateTime(wall, zone)}: animal ${grouped(animal)} corrected: ${reason}.`,
    )
  return [...between, ...since]
}
