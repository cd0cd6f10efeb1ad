/** What a number is that was scanned or typed where no screen wanted it. */
import { useCallback, useState } from 'react'
import type { CallOutput } from '../../shared-types/desk-api.ts'
import type { Part, SampleNumber } from '../../shared-types/sample-number.ts'
import { callDesk } from '../desk/answer.ts'
import { useConnection } from '../desk/desk-provider.tsx'
import type { ScreenName } from '../desk/place.ts'
import { sayDone, sayRefused } from '../scanner/strip.ts'

export interface Found {
  readonly number: SampleNumber
  readonly say: string
  readonly screen: ScreenName
  /** What that screen is asked to show. */
  readonly about: SampleNumber
}

/** Where a number of each part is worked with. */
export const screenOfPart: Record<Part, ScreenName> = {
  A: 'line',
  L: 'line',
  R: 'line',
  X: 'line',
  H: 'line',
  K: 'kits',
  C: 'coolers',
  P: 'station',
  M: 'handoff',
}

/** A bag in a cooler is found there; all that belongs to an animal leads to the animal. */
function placeOf(read: CallOutput<'number'>): Found {
  const { number, say, animal, cooler } = read
  if (cooler !== null) return { number, say, screen: 'coolers', about: cooler }
  const screen = screenOfPart[read.part]
  if (screen !== 'line') return { number, say, screen, about: number }
  return animal === null
    ? { number, say, screen: 'kits', about: number }
    : { number, say, screen, about: animal }
}

export function useFind() {
  const connection = useConnection()
  const [found, setFound] = useState<Found>()
  const find = useCallback(
    async (text: string) => {
      const read = await callDesk(connection, 'number', { text })
      setFound(read.ok ? placeOf(read.value) : undefined)
      if (read.ok) sayDone(read.value.say)
      else sayRefused(read.refusal)
      return read.ok
    },
    [connection],
  )
  return { found, find, clear: () => setFound(undefined) }
}
