/**
 * Which requests may be answered at all. Any page in any browser on this computer can send requests
 * to 127.0.0.1, and browsers take every port of one host for the same site, so a cookie alone proves
 * nothing: each request must also be addressed to us by our exact name and come from our own page.
 */
import type { IncomingHttpHeaders } from 'node:http'

/** What the guard looks at. */
export interface Asked {
  readonly method?: string | undefined
  readonly headers: IncomingHttpHeaders
}

/** Why a request is turned away: the HTTP status and one sentence. */
export interface TurnedAway {
  readonly status: number
  readonly say: string
}

/** The one address under which the desk answers, as a browser writes it. */
export function originAt(port: number): string {
  return `http://127.0.0.1:${port}`
}

/** The reason to turn a request away, or `undefined` if it may come in. */
export function turnedAway({ method, headers }: Asked, port: number): TurnedAway | undefined {
  const origin = originAt(port)
  // Another name for this computer means a foreign page had its own name point here.
  if (headers.host !== new URL(origin).host) return { status: 421, say: 'This is not the desk.' }
  if (isForeign(headers, origin)) return { status: 403, say: 'Only the desk’s own page may ask.' }
  if (method === 'GET') return undefined
  // OPTIONS too ends here: answering a preflight would let other pages in.
  if (method !== 'POST') return { status: 405, say: 'The desk takes GET and POST only.' }
  return wrongPost(headers)
}

function isForeign(headers: IncomingHttpHeaders, origin: string): boolean {
  if (headers.origin !== undefined && headers.origin !== origin) return true
  const site = headers['sec-fetch-site']
  return site !== undefined && site !== 'same-origin' && site !== 'none'
}

/** A form of a foreign page can post without a preflight, but not as JSON. */
function wrongPost(headers: IncomingHttpHeaders): TurnedAway | undefined {
  const type = headers['content-type']?.split(';')[0]?.trim().toLowerCase()
  if (headers.origin === undefined || type !== 'application/json')
    return { status: 415, say: 'A request to the desk is JSON from its own page.' }
  return undefined
}
