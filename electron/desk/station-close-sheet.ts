/** The station close sheet: what the desks signed, added up, as it stands now. */
import { countEntries, headOf } from '../../db/log/read-entries.ts'
import { varianceWords } from '../../shared-types/close.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import { numberParts, stationOfDesk } from '../../shared-types/sample-number.ts'
import type { PdfFile } from '../../shared-types/views/common.ts'
import type { StationCloseView, StationItemView } from '../../shared-types/views/station-close.ts'
import { printStationCloseSheet, type StationCloseSheet } from '../print/station-close-sheet.ts'
import { localDateTime } from '../station/local-time.ts'
import type { QueryCall } from './call.ts'
import { coolersHere, outcomesTold } from './close-sheet.ts'
import { paperOf, pdfFile } from './pdf.ts'

/** Prints it, signed or not. Refuses `no-such-day` where the record holds no day of that station. */
export async function stationCloseSheetPdf(
  call: QueryCall,
  view: StationCloseView,
): Promise<Result<PdfFile>> {
  const { day, totals } = view
  if (!day || !totals)
    return refused(
      'no-such-day',
      'No desk of that station has opened that day.',
      'Choose another day, or merge the log of the desk first.',
    )
  const sheet = sheetOf(call, view, day, totals)
  const pdf = await printStationCloseSheet(sheet, paperOf(call.station.zone))
  return granted(pdfFile(`station-close-${day.station}-${day.date}.pdf`, pdf))
}

function sheetOf(
  { log, station: reader, now }: QueryCall,
  view: StationCloseView,
  day: NonNullable<StationCloseView['day']>,
  totals: NonNullable<StationCloseView['totals']>,
): StationCloseSheet {
  const at = (ms: number) => localDateTime(ms, reader.zone)
  const { signed } = view
  return {
    station: day.name,
    code: day.station,
    date: day.date,
    practice: reader.practice,
    lead: signed && { name: signed.lead, at: at(signed.ms), hand: { how: 'pin' } },
    second: signed ? secondSaid(signed) : '',
    outdated: signed?.outdated ?? false,
    open: view.open.map(({ say }) => say),
    unsettled: view.unsettled,
    desks: view.desks.map((desk) => ({
      desk: desk.desk,
      closed: desk.lead ?? (desk.state === 'open' ? 'NOT CLOSED' : 'did not work that day'),
      second: desk.lead === null ? '' : (desk.second ?? `alone: ${desk.aloneBecause}`),
      at: desk.closedMs === null ? '' : at(desk.closedMs),
      amended: desk.amended,
    })),
    counts: view.items.map((item) => ({
      what: item.words,
      expected: item.expected,
      counted: item.counted,
      between: item.between,
      byDesk: byDesk(item),
      reason: item.explained
        ? [varianceWords[item.explained.reason], item.explained.words].filter(Boolean).join(': ')
        : '',
    })),
    outcomes: outcomesTold(totals),
    coolersHere: coolersHere(log).filter(
      ({ cooler }) => stationOfDesk(numberParts(cooler).desk) === day.station,
    ),
    chain: { hash: headOf(log, log.desk)?.hash ?? '', entries: countEntries(log) },
    madeAtMs: now,
  }
}

function secondSaid(signed: NonNullable<StationCloseView['signed']>): string {
  if (signed.second !== null) return `Second person ${signed.second}, with their own PIN`
  return signed.aloneBecause === '' ? '' : `Signed without a second person: ${signed.aloneBecause}`
}

/** `26KRVA 40 of 41 (lost); 26KRVC 12 of 12`. */
function byDesk({ desks }: StationItemView): string {
  return desks
    .map(({ desk, counted, expected, reasons }) => {
      const why = reasons.length === 0 ? '' : ` (${reasons.join('; ')})`
      return `${desk} ${counted} of ${expected}${why}`
    })
    .join('; ')
}
