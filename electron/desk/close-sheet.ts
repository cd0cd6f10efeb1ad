/** The close sheet of a day, as the lead signed it. */
import type { ReadableLog } from '../../db/connection.ts'
import { countEntries, headOf } from '../../db/log/read-entries.ts'
import { looksBySite } from '../../db/read/bags.ts'
import { bagTally, coolers, excursionsIn } from '../../db/read/coolers.ts'
import { latestNote } from '../../db/read/counts.ts'
import { closeSheetOf, daysOf, latestDay } from '../../db/read/station.ts'
import { outcomeWords } from '../../shared-types/animal.ts'
import { varianceWords } from '../../shared-types/close.ts'
import type { EntryBody } from '../../shared-types/entry.ts'
import type { LocalDate } from '../../shared-types/local-date.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import type { DayRecord } from '../../shared-types/station.ts'
import { checkWords, siteWords } from '../../shared-types/tissue.ts'
import type { PdfFile } from '../../shared-types/views/common.ts'
import { type CloseSheet, printCloseSheet } from '../print/close-sheet.ts'
import { waits } from '../station/figures.ts'
import { labelAccount } from '../station/label-account.ts'
import { localDateTime } from '../station/local-time.ts'
import { itemWords } from '../station/reconcile.ts'
import type { QueryCall } from './call.ts'
import { amendmentsOf, sayKitsTomorrow, unfitOf } from './close-sheet-parts.ts'
import { kitsAfter } from './handover.ts'
import { labelsLeft } from './labels-left.ts'
import { figuresOfDay } from './line.ts'
import { namesOf } from './names.ts'
import { paperOf, pdfFile } from './pdf.ts'
import { placesMissing } from './places-missing.ts'

/** Prints the close sheet of a date; refuses `day-not-closed` for a day nobody has signed. */
export async function closeSheetPdf(
  call: QueryCall,
  date: LocalDate | null,
): Promise<Result<PdfFile>> {
  const day = daysOf(call.log).find((each) => each.date === date)
  const signed = date && closeSheetOf(call.log, date)
  if (!day || !signed || day.state !== 'closed')
    return refused(
      'day-not-closed',
      'That day is not closed.',
      'Close it first (close screen), then print its sheet.',
    )
  const pdf = await printCloseSheet(sheetOf(call, day, signed), paperOf(call.station.zone))
  return granted(pdfFile(`close-${call.station.desk}-${day.date}.pdf`, pdf))
}

function sheetOf(call: QueryCall, day: DayRecord, signed: EntryBody<'day.closed'>): CloseSheet {
  const { log, station, now } = call
  const nameOf = namesOf(log)
  const closedMs = day.closedMs ?? now
  return {
    station: station.name,
    desk: station.desk,
    date: day.date,
    practice: station.practice,
    lead: {
      name: nameOf(signed.lead),
      at: localDateTime(closedMs, station.zone),
      hand: { how: 'pin' },
    },
    second: signed.second
      ? `Second person ${nameOf(signed.second)}, with their own PIN`
      : signed.aloneBecause === ''
        ? ''
        : `Signed without a second person: ${signed.aloneBecause}`,
    counts: signed.items.map(({ item, expected, counted, reason, words }) => ({
      ...whatAndWhere(itemWords(item, nameOf)),
      expected,
      counted,
      reason: reason === null ? '' : [varianceWords[reason], words].filter(Boolean).join(': '),
    })),
    outcomes: outcomesTold(signed.animals),
    waits: waits(figuresOfDay(log, day)),
    ...labelsAtClose(log, day, signed),
    samples: looksBySite(log, day.openedMs, closedMs + 1).map(({ site, seen, count }) => ({
      site: siteWords[site],
      check: checkWords[seen],
      count,
    })),
    placesMissing: placesMissing(log, station.settings, day.date).length,
    readingsOutside: readingsOutside(call, day.openedMs, closedMs),
    coolersHere: coolersHere(log),
    amendments: amendmentsOf(log, day, station.zone),
    unfit: unfitOf(log, day, closedMs),
    // For training, and nobody else's business.
    unfitBySampler: call.person?.role === 'lead',
    kitsTomorrow: sayKitsTomorrow(kitsAfter(log, station, day)),
    handover: noteOf(log, day),
    chain: { hash: headOf(log, log.desk)?.hash ?? '', entries: countEntries(log) },
    madeAtMs: now,
  }
}

/** Labels are known as they stand now, so only the sheet of the latest day tells of them. */
function labelsAtClose(
  log: ReadableLog,
  day: DayRecord,
  { items }: EntryBody<'day.closed'>,
): Pick<CloseSheet, 'labels'> {
  const unused = items.find(({ item }) => item.of === 'unused-kit-labels')
  if (!unused || latestDay(log)?.date !== day.date) return {}
  return { labels: labelAccount(labelsLeft(log), unused.counted) }
}

/** Coolers that no courier has taken. */
export function coolersHere(log: ReadableLog) {
  return coolers(log)
    .filter(({ state }) => state !== 'handed-off')
    .map(({ cooler, name, seal }) => ({
      cooler,
      name,
      bags: bagTally(log, cooler),
      seal: seal ?? '',
    }))
}

/** What became of the animals, in words. */
export function outcomesTold({ outcomes, left, recorded }: EntryBody<'day.closed'>['animals']) {
  return [
    ...(['both', 'one', 'none'] as const).map((outcome) => ({
      words: `sampled: ${outcomeWords[outcome]}`,
      count: outcomes[outcome] ?? 0,
    })),
    { words: 'left unsampled', count: left },
    { words: 'recorded only', count: recorded },
  ]
}

/** The note of this day, if its lead left one. */
function noteOf(log: ReadableLog, { date }: DayRecord): string {
  const note = latestNote(log)
  return note?.date === date ? note.words : ''
}

/** `Kits in hand: Ines` is a thing and a place. */
function whatAndWhere(words: string): { what: string; place: string } {
  const [what = words, place = ''] = words.split(/: | in cooler /)
  return { what, place: words.includes(' in cooler ') ? `cooler ${place}` : place }
}

function readingsOutside({ log, station }: QueryCall, fromMs: number, toMs: number) {
  return excursionsIn(log, fromMs, toMs + 1).map(({ cooler, keeping, celsius, ms, by }) => {
    const { low, high } = station.settings.limits[keeping]
    return {
      cooler,
      celsius,
      limits: `${low} to ${high} °C`,
      at: localDateTime(ms, station.zone),
      by: by ?? '',
    }
  })
}
