/** The station and its days. */
import type { EntryBody } from '../../shared-types/entry.ts'
import type { LocalDate } from '../../shared-types/local-date.ts'
import { type DeskId, nobodysDesk } from '../../shared-types/sample-number.ts'
import type { DayRecord, StationRecord, StationSettings } from '../../shared-types/station.ts'
import type { ReadableLog } from '../connection.ts'
import type { DayTable, StationTable } from '../read-tables.ts'
import { type Params, prepareAll, prepareOne } from '../statement.ts'

const stationRow = prepareOne((db, p: Params<{ desk: DeskId }>) =>
  db.selectFrom('station').selectAll().where('desk', '=', p('desk')),
)

/** The station whose desk this log is; null before it was set up. Of a merged log, who reads it. */
export function stationOf(log: ReadableLog): StationRecord | null {
  const row = stationRow(log, { desk: log.desk })
  if (!row) return log.desk === nobodysDesk ? (mergedStation(log)[0] ?? null) : null
  return rowToStation(row)
}

const stationRows = prepareAll((db) => db.selectFrom('station').selectAll().orderBy('desk'))

/** Every station and office with entries in this log. */
export function stationsIn(log: ReadableLog): StationRecord[] {
  return stationRows(log).map(rowToStation)
}

/** What a merged log is called that no office has taken up. */
export const mergedName = 'Merged record'

/** A merged log that no office has taken up is read by the settings of its first station. */
function mergedStation(log: ReadableLog): StationRecord[] {
  return stationsIn(log)
    .slice(0, 1)
    .map((first) => ({ ...first, desk: nobodysDesk, name: mergedName, office: true }))
}

function rowToStation(row: StationTable): StationRecord {
  return {
    desk: row.desk,
    name: row.name,
    zone: row.zone,
    practice: row.practice === 1,
    office: row.office === 1,
    settings: JSON.parse(row.settings) as StationSettings,
  }
}

const dayRows = prepareAll((db, p: Params<{ desk: DeskId }>) =>
  db.selectFrom('day').selectAll().where('desk', '=', p('desk')).orderBy('date'),
)

/** A desk's days, oldest first; of the log's own desk unless another of the record is named. */
export function daysOf(log: ReadableLog, desk: DeskId = log.desk): DayRecord[] {
  return dayRows(log, { desk }).map(rowToDay)
}

const latestDayRow = prepareOne((db, p: Params<{ desk: DeskId }>) =>
  db.selectFrom('day').selectAll().where('desk', '=', p('desk')).orderBy('date', 'desc').limit(1),
)

/** The day that is open, or the last one that was; null before the first. */
export function latestDay(log: ReadableLog): DayRecord | null {
  const row = latestDayRow(log, { desk: log.desk })
  return row ? rowToDay(row) : null
}

const sheetRow = prepareOne((db, p: Params<{ desk: DeskId; date: LocalDate }>) =>
  db.selectFrom('day').select('sheet').where('desk', '=', p('desk')).where('date', '=', p('date')),
)

/** The body of the latest `day.closed` of a date, or null while it was never closed. */
export function closeSheetOf(log: ReadableLog, date: LocalDate): EntryBody<'day.closed'> | null {
  const sheet = sheetRow(log, { desk: log.desk, date })?.sheet
  return sheet ? (JSON.parse(sheet) as EntryBody<'day.closed'>) : null
}

const everyDay = prepareAll((db) =>
  db.selectFrom('day').selectAll().orderBy('date', 'desc').orderBy('desk'),
)

/** A day of one of the desks in a merged log, with the close that stands. */
export interface DeskDay {
  readonly desk: DeskId
  readonly day: DayRecord
  /** Null while it is not closed. */
  readonly close: { readonly hash: string; readonly sheet: EntryBody<'day.closed'> } | null
}

/** Every day of every desk in this log, the latest first. */
export function daysInRecord(log: ReadableLog): DeskDay[] {
  return everyDay(log).map((row) => ({
    desk: row.desk,
    day: rowToDay(row),
    close:
      row.state === 'closed' && row.sheet !== null && row.close_hash !== null
        ? { hash: row.close_hash, sheet: JSON.parse(row.sheet) as EntryBody<'day.closed'> }
        : null,
  }))
}

function rowToDay(row: DayTable): DayRecord {
  return {
    date: row.date,
    state: row.state,
    openedMs: row.opened_ms,
    closedMs: row.closed_ms,
    closedBy: row.closed_by,
    reopenedMs: row.reopened_ms,
  }
}

const putBackRows = prepareAll((db) =>
  db
    .selectFrom('clock_put_back')
    .select(['wall_ms as wallMs', 'last_ms as lastMs'])
    .orderBy('last_ms')
    .orderBy('hash'),
)

/** Every time a lead put a clock back. */
export function clocksPutBack(log: ReadableLog): { wallMs: number; lastMs: number }[] {
  return putBackRows(log)
}
