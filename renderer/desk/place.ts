/** Which screen this window shows, kept in the address so that a reload stays where it was. */
import { useSyncExternalStore } from 'react'
import { SampleNumber } from '../../shared-types/sample-number.ts'
import { Screen } from '../../shared-types/views/common.ts'

export type ScreenName = (typeof Screen.options)[number]

export interface Place {
  readonly screen: ScreenName
  /** The number the visitor came for, such as a cooler just scanned elsewhere. */
  readonly number: SampleNumber | undefined
}

/** Goes to a screen, with the number it is about if there is one. */
export function go(screen: ScreenName, number?: SampleNumber): void {
  window.location.hash = number === undefined ? screen : `${screen}/${number}`
}

/** Reads a place from the address's fragment; anything unknown is the line. */
export function placeOf(hash: string): Place {
  const [screen, number] = hash.replace(/^#/, '').split('/')
  const known = Screen.safeParse(screen)
  const read = SampleNumber.safeParse(number)
  return { screen: known.data ?? 'line', number: read.data }
}

/** Whether this window is the board for a screen outside; it stays one. */
export function isBoard(): boolean {
  return window.location.hash === '#board'
}

function onMove(listener: () => void): () => void {
  window.addEventListener('hashchange', listener)
  return () => window.removeEventListener('hashchange', listener)
}

export function usePlace(): Place {
  const hash = useSyncExternalStore(onMove, () => window.location.hash)
  return placeOf(hash)
}
