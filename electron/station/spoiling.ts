/**
 * How far gone tissue is by time and warmth. Heads keep several days when cold and must be handed in
 * quickly when warm (cwd-info.org, "Outdoor Watch"); no fixed limit in hours is published, so each
 * station settles its own, stated at 10 degrees Celsius.
 */
import type { AnimalRecord } from '../../shared-types/animal.ts'
import type { LineSettings } from '../../shared-types/line.ts'
import { minuteOfDay } from './arrivals.ts'
import { localDate, minuteOfLocalDay } from './local-time.ts'

/** The temperature at which the station's limit is stated. */
export const statedCelsius = 10
const hourMs = 3_600_000
const dayMs = 24 * hourMs
const minuteMs = 60_000
/** Where nobody asked the hour, an animal of an earlier day is taken as shot at noon. */
const noon = 12 * 60
/** Where nobody asked the hour, an animal of today is taken as shot this long before it came. */
const usualDriveMs = 2 * hourMs

export interface Air {
  readonly zone: string
  /** The air at the line, or null when nobody has read it: then as the limit states it. */
  readonly celsius: number | null
}

/** When the animal was taken, as nearly as the log can say, in wall milliseconds. */
export function harvestedMs(
  { facts, arrivedMs }: Pick<AnimalRecord, 'facts' | 'arrivedMs'>,
  zone: string,
): number {
  const today = facts.harvested === localDate(arrivedMs, zone)
  if (today && facts.harvestedAt === undefined) return arrivedMs - usualDriveMs
  const minute = facts.harvestedAt === undefined ? noon : minuteOfDay(facts.harvestedAt)
  const days = Math.round(
    (Date.parse(localDate(arrivedMs, zone)) - Date.parse(facts.harvested)) / dayMs,
  )
  const midnight = arrivedMs - minuteOfLocalDay(arrivedMs, zone) * minuteMs
  return Math.min(arrivedMs, midnight - days * dayMs + minute * minuteMs)
}

/** How much faster tissue spoils than at the stated temperature: twice for each 10 degrees (van 't Hoff's rule). */
export function spoilingSpeed(celsius: number | null): number {
  return 2 ** (((celsius ?? statedCelsius) - statedCelsius) / 10)
}

/** Hours since harvest, by the clock. */
export function hoursSinceHarvest(animal: AnimalRecord, zone: string, nowMs: number): number {
  return Math.max(0, nowMs - harvestedMs(animal, zone)) / hourMs
}

/** A frozen head keeps, and of a spoiled one nothing is left to save: neither is in a hurry. */
export function isSpoiling(
  animal: AnimalRecord,
  { spoilingHours }: Pick<LineSettings, 'spoilingHours'>,
  { zone, celsius }: Air,
  nowMs: number,
): boolean {
  const { faults } = animal.facts.head
  if (faults.includes('frozen') || faults.includes('spoiled')) return false
  return hoursSinceHarvest(animal, zone, nowMs) * spoilingSpeed(celsius) >= spoilingHours
}
