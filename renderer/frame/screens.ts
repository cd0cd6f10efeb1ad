/** The screens of a station day: their keys, their names, and the work done on each. */
import type { CommandName } from '../../shared-types/desk-api.ts'
import type { ScreenName } from '../desk/place.ts'

export interface ScreenEntry {
  readonly screen: ScreenName
  readonly key: string
  readonly words: string
  /** Who may not do this may still look. Null where looking is the work. */
  readonly work: CommandName | null
}

export const screenEntries: readonly ScreenEntry[] = [
  { screen: 'line', key: 'F2', words: 'Line', work: null },
  { screen: 'check-in', key: 'F3', words: 'Check-in', work: 'animal.checkIn' },
  { screen: 'bench', key: 'F4', words: 'Bench', work: 'kit.open' },
  { screen: 'kits', key: 'F6', words: 'Kits', work: 'kits.move' },
  { screen: 'coolers', key: 'F7', words: 'Coolers', work: 'bag.place' },
  { screen: 'close', key: 'F8', words: 'Close', work: 'count.enter' },
  { screen: 'handoff', key: 'F9', words: 'Handoff', work: 'cooler.scanOut' },
  { screen: 'station', key: 'F10', words: 'Station', work: null },
]

/** What a screen is called on its key. */
export function screenWords(screen: ScreenName): string {
  return screenEntries.find((entry) => entry.screen === screen)?.words ?? screen
}
