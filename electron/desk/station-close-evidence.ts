/** The closes of a station's desks, as the merged log has them. */
import type { ReadableLog } from '../../db/connection.ts'
import {
  bagsInCoolersOfOthers,
  kitsGivenToOthers,
  labelsOfOthersUsed,
} from '../../db/read/between-desks.ts'
import { type DeskDay, daysInRecord, stationsIn } from '../../db/read/station.ts'
import { stationClosesOf, stationVariances } from '../../db/read/station-closes.ts'
import type { LocalDate } from '../../shared-types/local-date.ts'
import { type DeskId, type SeasonStation, stationOfDesk } from '../../shared-types/sample-number.ts'
import type { StationDay } from '../../shared-types/views/station-close.ts'
import type { DeskClose, StationView } from '../station/station-close.ts'

/** The desks of a station with entries in this record. */
export function desksOfStation(log: ReadableLog, station: SeasonStation) {
  return stationsIn(log).filter(({ desk, office }) => !office && stationOfDesk(desk) === station)
}

/** Every day of every station, the latest first. */
export function stationDays(log: ReadableLog): StationDay[] {
  const signed = stationClosesOf(log)
  const days = new Map<string, StationDay>()
  for (const { desk, day, close } of daysInRecord(log)) {
    const station = stationOfDesk(desk)
    const key = `${day.date} ${station}`
    const desks = desksOfStation(log, station)
    const before = days.get(key) ?? {
      station,
      name: desks[0]?.name ?? station,
      date: day.date,
      desks: desks.length,
      closed: 0,
      signed: signed.some((each) => each.station === station && each.date === day.date),
    }
    days.set(key, { ...before, closed: before.closed + (close ? 1 : 0) })
  }
  return [...days.values()]
}

function deskClose(log: ReadableLog, desk: DeskId, ofDay: DeskDay | undefined): DeskClose {
  const nothing = { kitsGiven: 0, labelsOfOthers: 0, bagsInOthers: new Map<never, number>() }
  if (!ofDay) return { desk, close: null, sheet: null, state: 'no-day', ...nothing }
  const { day, close } = ofDay
  if (!close) return { desk, close: null, sheet: null, state: 'open', ...nothing }
  const within = { desk, from: day.openedMs, to: day.closedMs ?? day.openedMs }
  // What the close itself moved is the variance that its sheet shows, and no news.
  const putRight = close.sheet.items
    .filter(({ item, reason }) => item.of.startsWith('kits') && reason === 'other-desk')
    .reduce((sum, { expected, counted }) => sum + expected - counted, 0)
  return {
    desk,
    close: close.hash,
    sheet: close.sheet,
    state: 'closed',
    kitsGiven: kitsGivenToOthers(log, within) - putRight,
    labelsOfOthers: labelsOfOthersUsed(log, within),
    bagsInOthers: bagsInCoolersOfOthers(log, within),
  }
}

/** What the rule needs to close a station's day. */
export function stationView(
  log: ReadableLog,
  station: SeasonStation,
  date: LocalDate,
): StationView {
  const days = daysInRecord(log).filter(({ day }) => day.date === date)
  return {
    station,
    date,
    desks: desksOfStation(log, station).map(({ desk }) =>
      deskClose(
        log,
        desk,
        days.find((each) => each.desk === desk),
      ),
    ),
    explanations: stationVariances(log, station, date),
  }
}
