/** Readings out of a logger's file, by what a person said of its columns, unit and zone. */
import {
  type DateOrder,
  type LoggerReading,
  mostReadings,
  type TemperatureUnit,
} from '../../shared-types/readings-file.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import type { TemperatureRange } from '../../shared-types/station.ts'
import type { z } from 'zod'
import type { ColdPoint } from './cold.ts'
import { localToMs } from './local-time.ts'

export interface LoggerPoints {
  readonly points: readonly ColdPoint[]
  /** Lines of the file, from 1, that hold no reading. */
  readonly skipped: readonly number[]
}

/** A number with a point or a comma, a unit behind it or not; null for anything else. */
export function readDegrees(text: string, unit: TemperatureUnit): number | null {
  const read = /^([+\-−]?\d{1,3}(?:[.,]\d+)?)\s*°?\s*([CF])?$/i.exec(text.trim())
  const said = read?.[2]?.toUpperCase()
  if (!read || (said !== undefined && said !== unit)) return null
  const degrees = Number((read[1] ?? '').replace(',', '.').replace('−', '-'))
  const celsius = unit === 'F' ? (degrees - 32) / 1.8 : degrees
  return celsius < -90 || celsius > 60 ? null : Math.round(celsius * 100) / 100
}

const orders: Record<DateOrder, readonly ['y' | 'm' | 'd', 'y' | 'm' | 'd', 'y' | 'm' | 'd']> = {
  'year-month-day': ['y', 'm', 'd'],
  'month-day-year': ['m', 'd', 'y'],
  'day-month-year': ['d', 'm', 'y'],
}

const written =
  /^(\d{1,4})[-/.](\d{1,2})[-/.](\d{1,4})[ T,]+(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,]\d+)?)?\s*([AP]M)?\s*(Z|[+-]\d{2}:?\d{2})?$/i

/**
 * A time as written, in wall milliseconds; null where it is none. `notBefore` settles the hour that
 * comes twice when clocks go back: the file goes forward. An offset behind the time is believed.
 */
export function readTime(
  text: string,
  order: DateOrder,
  zone: string,
  notBefore: number,
): number | null {
  const read = written.exec(text.trim())
  if (!read) return null
  const parts = { y: 0, m: 0, d: 0 }
  orders[order].forEach((part, place) => {
    parts[part] = Number(read[place + 1])
  })
  const year = parts.y < 100 ? 2000 + parts.y : parts.y
  const hour = hourOf(Number(read[4]), read[7])
  const local = Date.UTC(year, parts.m - 1, parts.d, hour, Number(read[5]), Number(read[6] ?? 0))
  const back = new Date(local)
  if (back.getUTCMonth() !== parts.m - 1 || back.getUTCDate() !== parts.d || hour > 23) return null
  const offset = read[8]
  return offset === undefined ? localToMs(local, zone, notBefore) : local - offsetMs(offset)
}

function hourOf(hour: number, half: string | undefined): number {
  if (half === undefined) return hour
  return (hour % 12) + (half.toUpperCase() === 'PM' ? 12 : 0)
}

function offsetMs(text: string): number {
  if (text.toUpperCase() === 'Z') return 0
  const minutes = Number(text.slice(1, 3)) * 60 + Number(text.slice(-2))
  return (text.startsWith('-') ? -1 : 1) * minutes * 60_000
}

/** The readings of a file cut into cells. Refuses a file without readings, and one that looks like the other unit. */
export function readLogger(
  rows: readonly (readonly string[])[],
  reading: LoggerReading,
  limits: z.infer<typeof TemperatureRange>,
  nowMs: number,
): Result<LoggerPoints> {
  const points: ColdPoint[] = []
  const skipped: number[] = []
  for (const [place, row] of rows.entries()) {
    if (place < reading.skipLines) continue
    const time = row[reading.timeColumn] ?? ''
    const ms = readTime(time, reading.dateOrder, reading.zone, points.at(-1)?.ms ?? 0)
    const celsius = readDegrees(row[reading.temperatureColumn] ?? '', reading.unit)
    if (ms === null || celsius === null || ms > nowMs) skipped.push(place + 1)
    else points.push({ ms, celsius })
  }
  if (points.length === 0) return noReadings()
  if (points.length > mostReadings)
    return refused(
      'too-many-readings',
      `The file holds ${points.length} readings; ${mostReadings} are taken in at once.`,
      'Cut the file at the day the cooler was opened, and take in the part from there.',
      'text',
    )
  const inDoubt = otherUnit(points, reading.unit, limits)
  if (inDoubt) return inDoubt
  return granted({ points: points.toSorted((a, b) => a.ms - b.ms), skipped })
}

function noReadings(): Result<never> {
  return refused(
    'no-readings',
    'By these columns, this date order and this unit no line of the file holds a reading up to now.',
    'Look at the first lines again, and say which column is the time, which the temperature, and how the date is written.',
    'reading',
  )
}

/**
 * Whether most readings are far outside the limits in the unit given and near them in the other: then
 * the unit was mixed up.
 */
function otherUnit(
  points: readonly ColdPoint[],
  unit: TemperatureUnit,
  limits: z.infer<typeof TemperatureRange>,
): Result<never> | null {
  const middle = points.map(({ celsius }) => celsius).toSorted((a, b) => a - b)[
    Math.floor(points.length / 2)
  ]
  if (middle === undefined || !unitInDoubt(middle, unit, limits)) return null
  return refused(
    'unit-in-doubt',
    `Read as °${unit}, the file lies around ${middle.toFixed(1)} °C, far outside the limits; as the other unit it would lie near them.`,
    `Look at the logger: does it show °C or °F? Choose the unit it shows.`,
    'unit',
  )
}

const farDegrees = 12
const nearDegrees = 4

/** Whether a temperature in °C is likely one of the other unit, given the limits of the cooler. */
export function unitInDoubt(
  celsius: number,
  unit: TemperatureUnit,
  { low, high }: z.infer<typeof TemperatureRange>,
): boolean {
  const off = (degrees: number) => Math.max(low - degrees, degrees - high, 0)
  const other = unit === 'C' ? (celsius - 32) / 1.8 : celsius * 1.8 + 32
  return off(celsius) > farDegrees && off(other) < nearDegrees
}
