/** Wall milliseconds as people at the station read them: local time with its zone. */
import { LocalDate } from '../../shared-types/local-date.ts'

const formats = new Map<string, Intl.DateTimeFormat>()

/** A format is slow to make and asked for in every list, so each is made once. */
function formatOf(locale: string, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const key = `${locale} ${Object.values(options).join(' ')}`
  const known = formats.get(key)
  if (known) return known
  const format = new Intl.DateTimeFormat(locale, options)
  formats.set(key, format)
  return format
}

/** The calendar day at the station. */
export function localDate(ms: number, zone: string): LocalDate {
  const parts = formatOf('en-CA', {
    timeZone: zone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
  }).format(new Date(ms))
  return LocalDate.parse(parts)
}

/** As on documents: `Sat 14 Nov 2026, 17:42 MST`. */
export function localDateTime(ms: number, zone: string): string {
  const read = partsOf(ms, zone)
  return `${read('weekday')} ${read('day')} ${read('month')} ${read('year')}, ${read('hour')}:${read('minute')} ${read('timeZoneName')}`
}

/** As in a list of one day: `17:42`. */
export function localTime(ms: number, zone: string): string {
  const read = partsOf(ms, zone)
  return `${read('hour')}:${read('minute')}`
}

/** ISO 8601 with the zone's offset, for files: `2026-11-14T17:42:10-07:00`. */
export function localIso(ms: number, zone: string): string {
  const offset = offsetMinutes(ms, zone)
  const shifted = new Date(ms + offset * 60_000).toISOString().slice(0, 19)
  const size = Math.abs(offset)
  const two = (number: number) => String(number).padStart(2, '0')
  return `${shifted}${offset < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`
}

function partsOf(ms: number, zone: string): (type: Intl.DateTimeFormatPartTypes) => string {
  const parts = formatOf('en-US', {
    timeZone: zone,
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
    timeZoneName: 'short',
  }).formatToParts(new Date(ms))
  return (type) => parts.find((part) => part.type === type)?.value ?? ''
}

function offsetMinutes(ms: number, zone: string): number {
  const name = formatOf('en-US', { timeZone: zone, timeZoneName: 'longOffset' })
    .formatToParts(new Date(ms))
    .find((part) => part.type === 'timeZoneName')?.value
  const read = /GMT([+-])(\d{2}):(\d{2})/.exec(name ?? '')
  if (!read) return 0
  return (read[1] === '-' ? -1 : 1) * (Number(read[2]) * 60 + Number(read[3]))
}

/** A moment as people say it near that moment: `at 17:42`, or with its day when it is another one. */
export function whenThere(ms: number, nowMs: number, zone: string): string {
  const day = localDate(ms, zone)
  if (day === localDate(nowMs, zone)) return `at ${localTime(ms, zone)}`
  const read = partsOf(ms, zone)
  return `${read('weekday')} ${read('day')} ${read('month')} at ${localTime(ms, zone)}`
}

/** Minutes since midnight at the station, seconds as a fraction. */
export function minuteOfLocalDay(ms: number, zone: string): number {
  const minutes = ms / 60_000 + offsetMinutes(ms, zone)
  return minutes - Math.floor(minutes / 1440) * 1440
}

/**
 * Wall milliseconds of a local date and time, given as if it were UTC. Where clocks go back an hour comes
 * twice: the first that is not before `notBefore`. Where they go forward an hour is left out: a time in it
 * is read with the offset that held before.
 */
export function localToMs(localAsUtc: number, zone: string, notBefore: number): number {
  const day = 86_400_000
  const offsets = [localAsUtc - day, localAsUtc + day].map((ms) => offsetMinutes(ms, zone) * 60_000)
  const moments = [...new Set(offsets)]
    .map((offset) => localAsUtc - offset)
    .toSorted((a, b) => a - b)
  const real = moments.filter((ms) => ms + offsetMinutes(ms, zone) * 60_000 === localAsUtc)
  const [before = 0] = offsets
  return real.find((ms) => ms >= notBefore) ?? real.at(-1) ?? localAsUtc - before
}
