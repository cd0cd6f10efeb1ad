import { z } from 'zod'

/** A calendar day at the station, `2026-11-14`. */
export const LocalDate = z.iso.date().brand<'LocalDate'>()
export type LocalDate = z.infer<typeof LocalDate>

/** A time of day at the station, `06:30`, 24 hours. */
export const TimeOfDay = z
  .string()
  .regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'hours and minutes, like 06:30')

function isZone(zone: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone })
    return true
  } catch {
    return false
  }
}

/** The station's time zone by its IANA name, such as `America/Denver`. */
export const Zone = z.string().refine(isZone, 'a time zone by name, like America/Denver')
