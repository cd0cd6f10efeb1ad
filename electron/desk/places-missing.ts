import type { ReadableLog } from '../../db/connection.ts'
import { placesOfDay } from '../../db/read/line.ts'
import type { LocalDate } from '../../shared-types/local-date.ts'
import type { AnimalNumber } from '../../shared-types/sample-number.ts'
import type { StationSettings } from '../../shared-types/station.ts'
import { placeUsable } from '../station/check-in.ts'

/** Animals of a day whose place of harvest the laboratory cannot use. */
export function placesMissing(
  log: ReadableLog,
  settings: StationSettings,
  day: LocalDate,
): AnimalNumber[] {
  return placesOfDay(log, day)
    .filter((animal) => !placeUsable(settings, animal))
    .map(({ animal }) => animal)
}
