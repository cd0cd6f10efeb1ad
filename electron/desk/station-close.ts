/** The station's close at an office: what its desks signed, added up over the merged log. */
import type { ReadableLog } from '../../db/connection.ts'
import { people } from '../../db/read/people.ts'
import { daysInRecord } from '../../db/read/station.ts'
import { type StationCloseRecord, stationClosesOf } from '../../db/read/station-closes.ts'
import type { LocalDate } from '../../shared-types/local-date.ts'
import type { PersonRecord } from '../../shared-types/person.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import { numberParts, type PersonId, type SeasonStation } from '../../shared-types/sample-number.ts'
import type { StationRecord } from '../../shared-types/station.ts'
import type {
  DeskCloseView,
  StationCloseView,
  StationDay,
} from '../../shared-types/views/station-close.ts'
import {
  animalsOf,
  decideStationClose,
  decideStationExplain,
  type DeskClose,
  needsBeforeStationClose,
  stationItems,
  type StationView,
} from '../station/station-close.ts'
import type { CommandHandlers, QueryHandlers } from './call.ts'
import { amendedAfter } from './amended-after.ts'
import { done } from './decided.ts'
import { unsettledIn } from './discrepancies.ts'
import { namesOf } from './names.ts'
import { checkOwnPin } from './own-pin.ts'
import { secondSigner } from './second-signer.ts'
import { desksOfStation, stationDays, stationView } from './station-close-evidence.ts'
import { stationCloseSheetPdf } from './station-close-sheet.ts'

/** Whether a person works at this office, and not at a station whose log was merged. */
function worksHere(log: ReadableLog): (person: PersonRecord) => boolean {
  return ({ person }) => numberParts(person).desk === log.desk
}

function secondOf(log: ReadableLog, { settings }: StationRecord, lead: PersonId | undefined) {
  const signing = people(log).filter(
    (each) => each.active && each.person !== lead && worksHere(log)(each),
  )
  return {
    wanted: settings.secondSigner !== false,
    people: signing.map(({ person, name }) => ({ person, name })),
  }
}

/** Who closed a desk, and what came after. */
function deskView(log: ReadableLog, view: StationView, close: DeskClose): DeskCloseView {
  const nameOf = namesOf(log)
  const station = desksOfStation(log, view.station).find(({ desk }) => desk === close.desk)
  const day = daysInRecord(log).find(
    (each) => each.desk === close.desk && each.day.date === view.date,
  )?.day
  const { sheet } = close
  return {
    desk: close.desk,
    name: station?.name ?? '',
    state: close.state,
    lead: sheet && nameOf(sheet.lead),
    second: sheet?.second ? nameOf(sheet.second) : null,
    aloneBecause: sheet?.aloneBecause ?? '',
    closedMs: sheet ? (day?.closedMs ?? null) : null,
    amended: station && day ? amendedAfter(log, station, day) : [],
  }
}

function totalsOf({ desks }: StationView): StationCloseView['totals'] {
  const animals = animalsOf(desks)
  const finished = Object.values(animals.outcomes).reduce((sum, count) => sum + (count ?? 0), 0)
  return { ...animals, waiting: 0, withSampler: 0, finished }
}

/** The close that was signed, and whether it still fits what the desks signed. */
function signedOf(log: ReadableLog, view: StationView): StationCloseView['signed'] {
  const record = closeOf(log, view)
  if (!record) return null
  const nameOf = namesOf(log)
  const { lead, second, aloneBecause } = record.sheet
  return {
    lead: nameOf(lead),
    second: second && nameOf(second),
    aloneBecause,
    ms: record.ms,
    outdated: isOutdated(record, view),
  }
}

function closeOf(log: ReadableLog, { station, date }: StationView): StationCloseRecord | undefined {
  return stationClosesOf(log).find((each) => each.station === station && each.date === date)
}

/** A desk that was reopened, closed again or only came to light since makes it so. */
function isOutdated({ sheet }: StationCloseRecord, { desks }: StationView): boolean {
  const signed = sheet.desks.map(({ close }) => close).toSorted()
  const now = desks.flatMap(({ close }) => close ?? []).toSorted()
  return signed.join() !== now.join() || desks.some(({ state }) => state === 'open')
}

interface Asked {
  readonly station?: SeasonStation | undefined
  readonly date?: LocalDate | undefined
}

function dayAsked(days: readonly StationDay[], { station, date }: Asked): StationDay | undefined {
  return days.find(
    (day) =>
      (station === undefined || day.station === station) &&
      (date === undefined || day.date === date),
  )
}

/** The station's close as the screen, the sheet and the terminal show it. */
export async function stationCloseView(
  log: ReadableLog,
  reader: StationRecord,
  lead: PersonId | undefined,
  asked: Asked,
): Promise<StationCloseView> {
  const days = stationDays(log)
  const day = dayAsked(days, asked)
  const second = secondOf(log, reader, lead)
  if (!day)
    return {
      days,
      day: null,
      desks: [],
      totals: null,
      items: [],
      open: [],
      unsettled: 0,
      signed: null,
      second,
    }
  const view = stationView(log, day.station, day.date)
  const items = stationItems(view, namesOf(log))
  return {
    days,
    day,
    desks: view.desks.map((desk) => deskView(log, view, desk)),
    totals: totalsOf(view),
    items,
    open: needsBeforeStationClose(view, items),
    unsettled: await unsettledIn(log),
    signed: signedOf(log, view),
    second,
  }
}

export const stationCloseQueries = {
  stationClose: async ({ log, station, person }, asked) =>
    granted(await stationCloseView(log, station, person?.person, asked)),
  stationCloseSheet: async (call, asked) => {
    const { log, station, person } = call
    return stationCloseSheetPdf(call, await stationCloseView(log, station, person?.person, asked))
  },
} satisfies Partial<QueryHandlers>

/** A desk's log holds its own close only. */
function checkOffice({ office }: StationRecord): Result<null> {
  if (office) return granted(null)
  return refused(
    'closed-at-office',
    "A station is closed over the merged log of all its desks, and this is one desk's log.",
    'Merge the logs, set up the office on the merged log, and close the station there.',
  )
}

export const stationCloseCommands = {
  'station.explain': ({ act, station: reader }, { station, date, ...explanation }) =>
    act((tx) => {
      const office = checkOffice(reader)
      if (!office.ok) return office
      const view = stationView(tx, station, date)
      return done(decideStationExplain(view, stationItems(view, namesOf(tx)), explanation))
    }),
  'station.close': async (call, { station, date, pin, second, aloneBecause }) => {
    const { act, by, station: reader, log } = call
    const office = checkOffice(reader)
    if (!office.ok) return office
    const right = await checkOwnPin(call, pin)
    if (!right.ok) return right
    const other = await secondSigner(call, second, worksHere(log))
    if (!other.ok) return other
    return act((tx) => {
      const view = stationView(tx, station, date)
      const items = stationItems(view, namesOf(tx))
      const signers = { lead: by.person, second: other.value, aloneBecause }
      return done(decideStationClose(view, items, signers, reader.settings.secondSigner !== false))
    })
  },
} satisfies Partial<CommandHandlers>
