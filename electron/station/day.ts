/** The station's day: opened in the morning, closed at dusk, reopened only in plain sight. */
import { draft, type EntryBody, type EntryDraft } from '../../shared-types/entry.ts'
import { KitAccount } from '../../shared-types/kit.ts'
import type { LocalDate } from '../../shared-types/local-date.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import type { DayRecord } from '../../shared-types/station.ts'

/** Work on animals, kits and labels belongs to an open day; a handoff may follow the close. */
export function checkDayOpen(day: DayRecord | null): Result<DayRecord> {
  if (day?.state === 'open') return granted(day)
  return day
    ? refused(
        'day-closed',
        `The day ${day.date} is closed.`,
        'Ask the lead to open the next day, or to reopen this one with a reason (station screen).',
      )
    : refused(
        'no-day-open',
        'No day is open yet.',
        'Ask the lead to open the day (station screen).',
      )
}

const dayMs = 24 * 3_600_000
/** A station may be set up some days ahead of its season. */
const daysAhead = 7

/**
 * Refuses a date too far ahead: days only go forward, so after a slip in the year no day could be
 * opened for a year.
 */
export function checkDayDate(date: LocalDate, today: LocalDate): Result<null> {
  if (Date.parse(date) - Date.parse(today) <= daysAhead * dayMs) return granted(null)
  return refused(
    'day-too-far',
    `The day ${date} is more than ${daysAhead} days after today, ${today}.`,
    "Correct the date, or the computer's clock if it is wrong.",
    'date',
  )
}

type Opening = EntryBody<'day.opened'>

/** What the ledger holds before the day: kits in stock, and kits written off as missing. */
export interface StockAtOpening {
  readonly inStock: number
  readonly missing: number
}

/** Opens a day with the kits and blank labels delivered for it. One day is open at a time. */
export function decideOpenDay(
  days: readonly DayRecord[],
  opening: Opening,
  today: LocalDate,
  stock: StockAtOpening,
): Result<EntryDraft[]> {
  const near = checkDayDate(opening.date, today)
  if (!near.ok) return near
  const last = days.at(-1)
  if (last?.state === 'open')
    return refused(
      'day-still-open',
      `The day ${last.date} is still open.`,
      'Close it first (close screen).',
      'date',
    )
  if (days.some(({ date }) => date === opening.date))
    return refused(
      'day-was-closed',
      `The day ${opening.date} was opened before.`,
      'Reopen it with a reason, or choose another date.',
      'date',
    )
  if (last && opening.date < last.date)
    return refused(
      'day-before-last',
      `The last day of this desk was ${last.date}.`,
      'Open a later date.',
      'date',
    )
  return granted(draftsOfOpening(opening, stock))
}

/** The entries of an opening: the day, and its delivery of kits into stock. */
export function draftsOfOpening(opening: Opening, stock: StockAtOpening): EntryDraft[] {
  const delivery: EntryDraft[] =
    opening.kits === 0
      ? []
      : [
          draft('kits.moved', {
            from: { in: 'delivered' },
            to: { in: 'stock' },
            count: opening.kits,
            reason: `opening count of ${opening.date}`,
          }),
        ]
  return [draft('day.opened', opening), ...stockPutRight(opening, stock), ...delivery]
}

/** The ledger starts the day from what was counted: kits short are missing, kits over were found. */
function stockPutRight({ date, stockCounted }: Opening, stock: StockAtOpening): EntryDraft[] {
  const over = stockCounted === null ? 0 : stockCounted - stock.inStock
  const reason = `opening count of ${date}`
  const found = Math.min(Math.max(over, 0), stock.missing)
  return [
    { from: 'stock', to: 'missing', count: Math.max(0, -over) },
    { from: 'missing', to: 'stock', count: found },
    { from: 'delivered', to: 'stock', count: Math.max(0, over) - found },
  ].flatMap(({ from, to, count }) =>
    count === 0
      ? []
      : [
          draft('kits.moved', {
            from: KitAccount.parse({ in: from }),
            to: KitAccount.parse({ in: to }),
            count,
            reason,
          }),
        ],
  )
}

/** Reopens the day closed last. */
export function decideReopen(day: DayRecord | null, reason: string): Result<EntryDraft[]> {
  if (day?.state !== 'closed')
    return refused(
      'day-not-closed',
      'No closed day is there to reopen.',
      'Go on with the open day.',
    )
  return granted([draft('day.reopened', { date: day.date, reason })])
}
