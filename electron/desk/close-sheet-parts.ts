/** Parts of the close sheet beside the counts: what was unfit, what came after an earlier signature. */
import type { ReadableLog } from '../../db/connection.ts'
import { understood } from '../../db/fold/fold.ts'
import { entriesOfDesk } from '../../db/log/read-entries.ts'
import { animalOf } from '../../db/read/animals.ts'
import { daysOf } from '../../db/read/station.ts'
import { looksBySampler, missedBySampler } from '../../db/read/unfit.ts'
import { varianceWords } from '../../shared-types/close.ts'
import type { EntryBody, KnownEntry } from '../../shared-types/entry.ts'
import type { DeskId } from '../../shared-types/sample-number.ts'
import type { DayRecord } from '../../shared-types/station.ts'
import { checkWords, missedWords } from '../../shared-types/tissue.ts'
import type { KitsTomorrow } from '../../shared-types/views/close.ts'
import type { Amendment, UnfitTally } from '../print/close-sheet.ts'
import { localDateTime } from '../station/local-time.ts'
import { itemWords } from '../station/reconcile.ts'
import { sayEntry } from '../station/story.ts'
import { isBaggable } from '../station/tissue.ts'
import { namesOf } from './names.ts'

/** Unfit tissue by reason, split by sampler. */
export function unfitOf(log: ReadableLog, day: DayRecord, closedMs: number): UnfitTally[] {
  const seen = looksBySampler(log, day.openedMs, closedMs + 1)
    .filter(({ site, seen }) => !isBaggable(site, seen))
    .map(({ seen, sampler, count }) => ({ why: `seen: ${checkWords[seen]}`, sampler, count }))
  const missed = missedBySampler(log, day.date).map(({ missed, sampler, count }) => ({
    why: `not taken: ${missedWords[missed]}`,
    sampler,
    count,
  }))
  const sums = new Map<string, UnfitTally>()
  for (const each of [...seen, ...missed]) {
    const key = `${each.why} ${each.sampler}`
    sums.set(key, { ...each, count: each.count + (sums.get(key)?.count ?? 0) })
  }
  return [...sums.values()]
}

/** Kits for another such day, with the forecast behind the number. */
export function sayKitsTomorrow({ animals, needKit, enough, here, ask }: KitsTomorrow): string {
  const forecast = `About ${animals} animals on another day like this, ${needKit} of 100 with a kit: ${enough} kits are enough on 95 of 100 such days.`
  return `${forecast} Here: ${here}. ${ask === 0 ? 'None need be asked for.' : `Ask for ${ask}.`}`
}

const notAmending: readonly KnownEntry['kind'][] = [
  'person.signed-in',
  'count.entered',
  'variance.explained',
  'cooler.read',
  'handover.written',
]

/**
 * What was recorded about days that were signed before: between the first close of this day and its
 * last, with the variances that an earlier signature settled; and corrections to animals of earlier days.
 */
export function amendmentsOf(
  log: ReadableLog,
  day: DayRecord,
  zone: string,
  desk: DeskId = log.desk,
): Amendment[] {
  const nameOf = namesOf(log)
  const closedMs = day.closedMs ?? 0
  const before = daysOf(log, desk).filter(({ date }) => date < day.date)
  const sinceMs = before.at(-1)?.closedMs ?? Number.POSITIVE_INFINITY
  const amendments: Amendment[] = []
  const add = (entry: KnownEntry, words: string) =>
    amendments.push({
      at: localDateTime(entry.at.wall, zone),
      by: entry.by ? nameOf(entry.by) : '',
      words,
    })
  let signed: Extract<KnownEntry, { kind: 'day.closed' }> | null = null
  for (const stored of entriesOfDesk(log, desk)) {
    const entry = understood(stored)
    if (!entry || entry.at.ms > closedMs) continue
    if (entry.kind === 'day.closed' && entry.body.date === day.date) signed = entry
    else if (signed && entry.kind === 'day.reopened')
      for (const words of ['', ...settledWords(signed.body, nameOf)])
        add(words === '' ? entry : signed, words || sayEntry(entry, nameOf))
    else if (signed && !notAmending.includes(entry.kind)) add(entry, sayEntry(entry, nameOf))
    else if (entry.at.ms > sinceMs && isOfEarlierDay(log, entry, day))
      add(entry, sayEntry(entry, nameOf))
  }
  return amendments
}

/** The variances of an earlier signature: the ledger was put right then, so they show no more. */
function settledWords(
  { items }: EntryBody<'day.closed'>,
  nameOf: (number: string) => string,
): string[] {
  return items.flatMap(({ item, expected, counted, reason, words }) =>
    expected === counted || reason === null
      ? []
      : [
          `Settled at the first close: ${itemWords(item, nameOf)}, expected ${expected}, counted ${counted}: ${[varianceWords[reason], words].filter(Boolean).join(', ')}.`,
        ],
  )
}

function isOfEarlierDay(log: ReadableLog, entry: KnownEntry, day: DayRecord): boolean {
  if (entry.kind !== 'animal.amended') return false
  const animal = animalOf(log, entry.body.animal)
  return animal !== null && animal.day < day.date
}
