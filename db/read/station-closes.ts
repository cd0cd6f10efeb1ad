/** The closes of stations over their desks, and how what was left over was explained. */
import type { EntryBody } from '../../shared-types/entry.ts'
import type { LocalDate } from '../../shared-types/local-date.ts'
import type { SeasonStation } from '../../shared-types/sample-number.ts'
import type { ReadableLog } from '../connection.ts'
import { type Params, prepareAll } from '../statement.ts'
import type { Explanation } from './counts.ts'

const closeRows = prepareAll((db) => db.selectFrom('station_close').selectAll())

export interface StationCloseRecord {
  readonly station: SeasonStation
  readonly date: LocalDate
  readonly ms: number
  readonly hash: string
  readonly sheet: EntryBody<'station.closed'>
}

/** The close of each station's day, as last signed. */
export function stationClosesOf(log: ReadableLog): StationCloseRecord[] {
  return closeRows(log).map(({ sheet, ...row }) => ({
    ...row,
    sheet: JSON.parse(sheet) as EntryBody<'station.closed'>,
  }))
}

const varianceRows = prepareAll((db, p: Params<{ station: SeasonStation; date: LocalDate }>) =>
  db
    .selectFrom('station_variance')
    .select(['key', 'expected', 'counted', 'reason', 'words'])
    .where('station', '=', p('station'))
    .where('date', '=', p('date')),
)

/** The latest explanation of each thing of a station's day, by item key. */
export function stationVariances(
  log: ReadableLog,
  station: SeasonStation,
  date: LocalDate,
): ReadonlyMap<string, Explanation> {
  return new Map(
    varianceRows(log, { station, date }).map(({ key, ...explanation }) => [key, explanation]),
  )
}
