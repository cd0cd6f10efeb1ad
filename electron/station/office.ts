/** How an office reads the record of many stations. */
import type { StationRecord, StationSettings } from '../../shared-types/station.ts'

/**
 * The settings an office begins with: those of its first station, with the harvest units of all. Takes
 * at least one station: a merged log without one has no animals either.
 */
export function officeSettings(stations: readonly StationRecord[]): {
  practice: boolean
  settings: StationSettings
} {
  const [first] = stations
  if (!first) throw new Error('an office needs the record of a station')
  const units = new Map(
    stations.flatMap(({ settings }) => settings.units.map((unit) => [unit.code, unit] as const)),
  )
  return {
    practice: first.practice,
    settings: { ...first.settings, units: [...units.values()] },
  }
}
