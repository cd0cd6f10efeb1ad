/** A station and what its lead settles before the first animal arrives. */
import { z } from 'zod'
import { AgeClass, Species } from './animal.ts'
import { LineSettings } from './line.ts'
import { LocalDate, Zone } from './local-date.ts'
import { type DeskId, DeskLetter, type PersonId, Season, StationCode } from './sample-number.ts'
import { Kept, TissueSite } from './tissue.ts'

/** The area a tag is valid for. */
export const HarvestUnit = z.strictObject({
  code: z.string().trim().min(1).max(12),
  name: z.string().trim().max(60),
  /** Sampling here is mandatory for hunters, not voluntary. */
  mandatory: z.boolean(),
})
export type HarvestUnit = z.infer<typeof HarvestUnit>

/** Which age classes of a species are sampled here; many programmes skip young of the year. */
export const SpeciesSampled = z.strictObject({ species: Species, ages: z.array(AgeClass).min(1) })

/** Which tissue is taken and how it is kept. */
export const TissueTaken = z.strictObject({ site: TissueSite, kept: Kept })

/** What the laboratory needs to know of the place of harvest. */
export const LocationNeed = z.enum(['unit', 'unit-and-place', 'coordinates'])
export type LocationNeed = z.infer<typeof LocationNeed>

/** The temperatures in degrees Celsius between which a cooler must stay. */
export const TemperatureRange = z
  .strictObject({ low: z.number().min(-90).max(60), high: z.number().min(-90).max(60) })
  .refine((range) => range.low < range.high, 'the low limit must be under the high one')

export const Keeping = z.enum(['chilled', 'frozen', 'room'])
export type Keeping = z.infer<typeof Keeping>

export const keepingWords: Record<Keeping, string> = {
  chilled: 'on ice',
  frozen: 'frozen',
  room: 'at room temperature',
}

/** Whether no two of a list share a key: a tissue named twice would print one number twice. */
function eachOnce(keys: readonly string[]): boolean {
  return new Set(keys).size === keys.length
}

export const StationSettings = z.strictObject({
  units: z
    .array(HarvestUnit)
    .min(1)
    .refine((list) => eachOnce(list.map(({ code }) => code)), 'two units have the same code'),
  species: z
    .array(SpeciesSampled)
    .min(1)
    .refine((list) => eachOnce(list.map(({ species }) => species)), 'a species is listed twice'),
  tissues: z
    .array(TissueTaken)
    .min(1)
    .refine((list) => eachOnce(list.map(({ site }) => site)), 'a tissue is listed twice'),
  locationNeed: LocationNeed,
  /** Hours a fresh sample may be chilled before it is frozen or delivered. */
  holdHours: z.number().min(1).max(240),
  limits: z.strictObject({
    chilled: TemperatureRange,
    frozen: TemperatureRange,
    room: TemperatureRange,
  }),
  laboratory: z.string().trim().min(2).max(120),
  /** When and where a hunter asks for the result; printed on the stub. */
  askForResult: z.string().trim().min(5).max(200),
  /** A wait in minutes that the station wants to stay under. */
  targetWaitMinutes: z.int().min(1).max(600),
  /** Whether a second person signs the close beside the lead; a station that has not said wants it. */
  secondSigner: z.boolean().optional(),
  /** How the line runs; a station that has not settled it begins with what most do. */
  line: LineSettings.optional(),
})
export type StationSettings = z.infer<typeof StationSettings>

export const StationSetUp = z.strictObject({
  season: Season,
  station: StationCode,
  letter: DeskLetter,
  name: z.string().trim().min(2).max(60),
  zone: Zone,
  /** A practice log is marked for ever and never mixes with a real one. */
  practice: z.boolean(),
  settings: StationSettings,
})
export type StationSetUp = z.infer<typeof StationSetUp>

/**
 * An office takes up a merged log: what is settled in it is signed by this desk. Its settings are those
 * it reads the record by.
 */
export const OfficeSetUp = StationSetUp

export const SettingsChanged = z.strictObject({ settings: StationSettings })

/** A day begins: kits and blank labels that were delivered since the last one. */
export const DayOpened = z.strictObject({
  date: LocalDate,
  kits: z.int().min(0).max(100_000),
  blankLabels: z.int().min(0).max(1_000_000),
  /** Kits in stock as counted at the opening, before the delivery; null where nobody counted. */
  stockCounted: z.int().min(0).max(100_000).nullable(),
})

export const DayReopened = z.strictObject({ date: LocalDate, reason: z.string().min(3).max(200) })

/** The lead has looked at the laptop's clock, which reads earlier than the log, and stands by it. */
export const ClockAccepted = z.strictObject({
  wallMs: z.int().nonnegative(),
  lastMs: z.int().nonnegative(),
})

/** A station as the log knows it now. */
export interface StationRecord {
  readonly desk: DeskId
  readonly name: string
  readonly zone: string
  readonly practice: boolean
  /** An office that merges the logs of stations, not a station. */
  readonly office: boolean
  readonly settings: StationSettings
}

/** A working day of this desk. Animals belong to the day that was open when they arrived. */
export interface DayRecord {
  readonly date: LocalDate
  readonly state: 'open' | 'closed'
  readonly openedMs: number
  readonly closedMs: number | null
  readonly closedBy: PersonId | null
  readonly reopenedMs: number | null
}
