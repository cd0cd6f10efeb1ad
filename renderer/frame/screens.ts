/** The screens of a station day: their keys, their names, and the work done on each. */
import type { CommandName } from '../../shared-types/desk-api.ts'
import type { ScreenName } from '../desk/place.ts'

export interface ScreenEntry {
  readonly screen: ScreenName
  readonly key: string
  readonly words: string
  /** Who may not do this may still look. Null where looking is the work. */
  readonly work: CommandName | null
  /** Where it belongs: on a station day, at an office that merges, or in both. */
  readonly at: 'station' | 'office' | 'both'
}

export const screenEntries: readonly ScreenEntry[] = [
  { screen: 'line', key: 'F2', words: 'Line', work: null, at: 'station' },
  { screen: 'check-in', key: 'F3', words: 'Check-in', work: 'animal.checkIn', at: 'station' },
  { screen: 'bench', key: 'F4', words: 'Bench', work: 'kit.open', at: 'station' },
  { screen: 'kits', key: 'F6', words: 'Kits', work: 'kits.move', at: 'station' },
  { screen: 'coolers', key: 'F7', words: 'Coolers', work: 'bag.place', at: 'station' },
  { screen: 'close', key: 'F8', words: 'Close', work: 'count.enter', at: 'station' },
  { screen: 'handoff', key: 'F9', words: 'Handoff', work: 'cooler.scanOut', at: 'station' },
  { screen: 'station', key: 'F10', words: 'Station', work: null, at: 'both' },
  { screen: 'results', key: 'F11', words: 'Results', work: 'results.import', at: 'both' },
  { screen: 'coverage', key: 'Alt+V', words: 'Coverage', work: 'coverage.plan', at: 'both' },
  { screen: 'close', key: 'F8', words: 'Close', work: 'station.close', at: 'office' },
  { screen: 'handoff', key: 'F9', words: 'Deliveries', work: 'receipt.count', at: 'office' },
  {
    screen: 'discrepancies',
    key: 'F12',
    words: 'Discrepancies',
    work: 'discrepancy.settle',
    at: 'office',
  },
]

/** What a screen is called on its key. */
export function screenWords(screen: ScreenName): string {
  return screenEntries.find((entry) => entry.screen === screen)?.words ?? screen
}

/** The screens of a station day, or those of an office. */
export function entriesAt(isOffice: boolean): readonly ScreenEntry[] {
  return screenEntries.filter(({ at }) => at === 'both' || (at === 'office') === isOffice)
}

/** The screen that is meant, or the first of this place where it belongs elsewhere. */
export function screenAt(isOffice: boolean, screen: ScreenName): ScreenName {
  const isHere = entriesAt(isOffice).some((entry) => entry.screen === screen)
  return isHere ? screen : isOffice ? 'discrepancies' : 'line'
}
