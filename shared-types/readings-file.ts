/** Temperatures that a logger recorded by itself, taken from its CSV file in one go. */
import { z } from 'zod'
import { Celsius } from './cooler.ts'
import { Zone } from './local-date.ts'
import { CoolerNumber } from './sample-number.ts'

export const TemperatureUnit = z.enum(['C', 'F'])
export type TemperatureUnit = z.infer<typeof TemperatureUnit>

/** In which order a file writes the parts of a date. Nobody can tell 3/4 by looking: it is asked. */
export const DateOrder = z.enum(['year-month-day', 'month-day-year', 'day-month-year'])
export type DateOrder = z.infer<typeof DateOrder>

/** What a person says of a logger's file: nothing in it is guessed. Columns count from nought. */
export const LoggerReading = z.strictObject({
  timeColumn: z.int().min(0).max(99),
  temperatureColumn: z.int().min(0).max(99),
  /** Lines above the first reading. */
  skipLines: z.int().min(0).max(200),
  dateOrder: DateOrder,
  unit: TemperatureUnit,
  zone: Zone,
})
export type LoggerReading = z.infer<typeof LoggerReading>

/** The most readings of one file: a month at ten minutes. */
export const mostReadings = 5000

export const ReadingsImported = z.strictObject({
  cooler: CoolerNumber,
  file: z.string().trim().min(1).max(120),
  unit: TemperatureUnit,
  zone: Zone,
  /** In degrees Celsius whatever the file has, oldest first. */
  readings: z
    .array(z.strictObject({ ms: z.int().nonnegative(), celsius: Celsius, excursion: z.boolean() }))
    .min(1)
    .max(mostReadings),
})
export type ReadingsImported = z.infer<typeof ReadingsImported>
