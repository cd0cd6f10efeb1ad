/** Sampling and testing over time. */
import type { LocalDate } from '../../../shared-types/local-date.ts'
import type { CoverageTimesView } from '../../../shared-types/views/coverage.ts'

/** Station days and laboratory days in one list, oldest first. */
export function daysOfSampling(
  stations: readonly {
    readonly day: LocalDate
    readonly checked: number
    readonly sampled: number
  }[],
  laboratories: readonly { readonly day: LocalDate; readonly animals: number }[],
): CoverageTimesView['days'] {
  const days = new Map<LocalDate, CoverageTimesView['days'][number]>()
  for (const { day, checked, sampled } of stations)
    days.set(day, { date: day, checked, sampled, tested: 0 })
  for (const { day, animals } of laboratories)
    days.set(day, {
      ...(days.get(day) ?? { date: day, checked: 0, sampled: 0 }),
      tested: animals,
    })
  return [...days.values()].toSorted((a, b) => (a.date < b.date ? -1 : 1))
}

/** The days within which half of the samples came back; null for none. */
export function medianOfBands(
  bands: readonly { readonly days: number; readonly samples: number }[],
): number | null {
  const half = bands.reduce((sum, { samples }) => sum + samples, 0) / 2
  let seen = 0
  return bands.find(({ samples }) => (seen += samples) >= half && half > 0)?.days ?? null
}
