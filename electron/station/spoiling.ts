/**
 * How far gone tissue is by time and warmth. Heads keep several days when cold and must be handed in
 * quickly when warm (cwd-info.org, "Outdoor Watch"); no fixed limit in hours is published, so each
 * station settles its own, stated at 10 degrees Celsius.
 */
import type { AnimalRecord } from '../../shared-types/animal.ts'
import type { LineSettings } from '../../shared-types/line.ts'
import type { LocalDate } from '../../shared-types/local-date.ts'
import { minuteOfDay } from './arrivals.ts'
import { localDate, minuteOfLocalDay } from './local-time.ts'

/** The temperature at which the station's limit is stated. */
const statedCelsius = 10
const hourMs = 3_600_000
const dayMs = 24 * hourMs
const minuteMs = 60_000

/** The air at the line, and the day it is about. */
export interface Air {
  readonly today: LocalDate
  /** Midnight at the station, at the beginning of today. */
  readonly midnightMs: number
  /** Null when nobody has read it: then taken as the limit states it. */
  readonly celsius: number | null
}

export function airAt(nowMs: number, zone: string, celsius: number | null): Air {
  const midnightMs = nowMs - minuteOfLocalDay(nowMs, zone) * minuteMs
  return { today: localDate(nowMs, zone), midnightMs, celsius }
}

/** Where nobody asked the hour: at noon, or two hours before it was brought in if that is earlier (ours). */
const usual = { minute: 12 * 60, driveMs: 2 * hourMs }

/** When the animal was taken, as nearly as the log can say, in wall milliseconds. */
export function harvestedMs(
  { facts, arrivedMs }: Pick<AnimalRecord, 'facts' | 'arrivedMs'>,
  { today, midnightMs }: Air,
): number {
  const days = (Date.parse(today) - Date.parse(facts.harvested)) / dayMs
  const at = (minute: number) => midnightMs - days * dayMs + minute * minuteMs
  return facts.harvestedAt === undefined
    ? Math.min(arrivedMs - usual.driveMs, at(usual.minute))
    : Math.min(arrivedMs, at(minuteOfDay(facts.harvestedAt)))
}

/** How much faster tissue spoils than at the stated temperature: twice for each 10 degrees (van 't Hoff's rule). */
export function spoilingSpeed(celsius: number | null): number {
  return 2 ** (((celsius ?? statedCelsius) - statedCelsius) / 10)
}

/** Hours since harvest, by the clock. */
export function hoursSinceHarvest(animal: AnimalRecord, air: Air, nowMs: number): number {
  return Math.max(0, nowMs - harvestedMs(animal, air)) / hourMs
}

/** A frozen head keeps, and of a spoiled one nothing is left to save: neither is in a hurry. */
export function isSpoiling(
  animal: AnimalRecord,
  { spoilingHours }: Pick<LineSettings, 'spoilingHours'>,
  air: Air,
  nowMs: number,
): boolean {
  const { faults } = animal.facts.head
  if (faults.includes('frozen') || faults.includes('spoiled')) return false
  return hoursSinceHarvest(animal, air, nowMs) * spoilingSpeed(air.celsius) >= spoilingHours
}
