/**
 * The windows that are open, one desk session each. A window is there while its news stream is; a
 * stream that breaks may come back (a slow moment, a sleeping laptop), so the session and whoever is
 * signed in wait a while before they go.
 */
import type { ServerResponse } from 'node:http'
import type { Desk, Session } from '../desk/desk.ts'

export interface Windows {
  /** The session of a window, opened if it is new; `undefined` when no further window may open. */
  readonly session: (id: string) => Session | undefined
  /** Keeps a window open until `stream` closes; false when no further window may open. */
  readonly attach: (id: string, stream: ServerResponse) => boolean
  /** Sends news to every window. */
  readonly tell: (topics: readonly string[]) => void
  /** How many windows are open, or may still come back. */
  readonly count: () => number
  /** Closes all and lets no further one open. */
  readonly close: () => void
}

/**
 * A browser opens at most six connections to one host. Each window holds one for its news, and one
 * must be left for all their commands.
 */
export const mostWindows = 5

interface Place {
  readonly session: Session
  readonly streams: Set<ServerResponse>
  leaving?: NodeJS.Timeout
}

/** `graceMs`: how long a window may be gone before it counts as closed. `onLastClosed`: then none is left. */
export function createWindows(desk: Desk, graceMs: number, onLastClosed: () => void): Windows {
  const places = new Map<string, Place>()
  let closed = false
  const streams = () => [...places.values()].flatMap((place) => [...place.streams])

  function take(id: string): Place {
    const place = places.get(id) ?? { session: desk.openSession(), streams: new Set() }
    places.set(id, place)
    waitFor(id, place)
    return place
  }

  function waitFor(id: string, place: Place): void {
    clearTimeout(place.leaving)
    if (place.streams.size === 0) place.leaving = setTimeout(() => leave(id, place), graceMs)
  }

  function leave(id: string, place: Place): void {
    desk.closeSession(place.session)
    places.delete(id)
    if (places.size === 0) onLastClosed()
  }

  function isFull(id: string): boolean {
    const attached = (places.get(id)?.streams.size ?? 0) > 0
    return closed || (!attached && streams().length >= mostWindows)
  }

  return {
    session: (id) => (isFull(id) ? undefined : take(id).session),
    attach(id, stream) {
      if (isFull(id)) return false
      const place = take(id)
      place.streams.add(stream)
      clearTimeout(place.leaving)
      stream.once('close', () => {
        place.streams.delete(stream)
        if (places.get(id) === place) waitFor(id, place)
      })
      return true
    },
    tell(topics) {
      for (const stream of streams()) stream.write(`data: ${JSON.stringify(topics)}\n\n`)
    },
    count: () => places.size,
    close() {
      closed = true
      const open = [...places.values()]
      places.clear()
      for (const place of open) {
        clearTimeout(place.leaving)
        desk.closeSession(place.session)
        for (const stream of place.streams) stream.destroy()
      }
    },
  }
}
