/** Which request gets which answer. */
import type { IncomingMessage, ServerResponse } from 'node:http'
import { deskFault } from '../../shared-types/bridge.ts'
import { refused } from '../../shared-types/result.ts'
import type { Desk } from '../desk/desk.ts'
import { answerResult, answerText, begin, isReader, readerPolicy } from './answer.ts'
import { readBody } from './body.ts'
import { turnedAway } from './guard.ts'
import { cookieToKey, type Keys, keyToCookie } from './keys.ts'
import type { Screens } from './screens.ts'
import type { Windows } from './windows.ts'

export interface RouterDeps {
  readonly desk: Desk
  readonly screens: Screens
  readonly keys: Keys
  readonly windows: Windows
  readonly port: number
}

/** A request whose address has been read. */
interface Visit {
  readonly request: IncomingMessage
  readonly response: ServerResponse
  /** Decoded path, e.g. `/call/line`. */
  readonly path: string
  readonly query: URLSearchParams
}

const entryNext = 'Open the address that Duskline printed when it started, or restart Duskline.'

/** The one listener of the server. It answers every request and never throws. */
export function createRouter(deps: RouterDeps) {
  return (request: IncomingMessage, response: ServerResponse): void => {
    const away = turnedAway(request, deps.port)
    const visit = readVisit(request, response)
    if (away !== undefined) turnAway(request, response, away.status, away.say)
    else if (visit === undefined) turnAway(request, response, 400, 'That address cannot be read.')
    else route(deps, visit).catch((fault: unknown) => answerFault(response, fault))
  }
}

/**
 * Turns a request away: in the desk's envelope if a page posted it, in words if a person opened it.
 * The connection ends with the answer, so that an unread body is not taken for the next request.
 */
function turnAway(
  request: IncomingMessage,
  response: ServerResponse,
  status: number,
  say: string,
): void {
  const ending = { Connection: 'close' }
  if (request.method === 'GET') return answerText(response, status, `${say} ${entryNext}`, ending)
  answerResult(response, status, refused('turned-away', say, entryNext), ending)
}

/** Reads the address by hand: a URL parser would follow `//other-host` and dot segments. */
function readVisit(request: IncomingMessage, response: ServerResponse): Visit | undefined {
  const [path = '', query] = (request.url ?? '').split('?', 2)
  try {
    return {
      request,
      response,
      path: decodeURIComponent(path),
      query: new URLSearchParams(query),
    }
  } catch {
    return undefined
  }
}

async function route(deps: RouterDeps, visit: Visit): Promise<void> {
  const { request, response, path } = visit
  if (request.method === 'GET' && path === '/enter') return enter(deps, visit)
  const key = cookieToKey(request.headers.cookie, deps.port)
  if (key === undefined || !deps.keys.isKey(key))
    return turnAway(request, response, 401, 'This browser has not been let in.')
  if (request.method === 'POST') return post(deps, visit, key)
  if (path === '/changes') return changes(deps, visit, key)
  return screen(deps, visit)
}

/**
 * Swaps the token for a cookie, and takes it out of the address at once. A browser that is already in
 * keeps the key it has: a new one would shut its other windows out.
 */
function enter({ keys, port }: RouterDeps, { request, response, query }: Visit): void {
  const key = keys.redeem(query.get('token') ?? '')
  if (key === undefined)
    return turnAway(request, response, 403, 'This address has been used, or is not ours.')
  const held = cookieToKey(request.headers.cookie, port)
  const kept = held !== undefined && keys.isKey(held) ? held : key
  begin(response, 303, { Location: '/', 'Set-Cookie': keyToCookie(kept, port) }).end()
}

function screen({ screens }: RouterDeps, { response, path }: Visit): void {
  const found = screens.get(path)
  if (found === undefined) return answerText(response, 404, 'There is no such screen.')
  const policy: Record<string, string> = isReader(path)
    ? { 'Content-Security-Policy': readerPolicy }
    : {}
  begin(response, 200, { 'Content-Type': found.type, ...policy }).end(found.body)
}

/** A window's news: the topics of each change, as server-sent events, until the window closes. */
function changes({ windows }: RouterDeps, visit: Visit, key: string): void {
  const { response } = visit
  const id = windowId(visit, key)
  if (id === undefined) return answerText(response, 400, 'That window has no name.')
  if (!windows.attach(id, response)) return answerText(response, 503, tooMany.refusal.say)
  begin(response, 200, { 'Content-Type': 'text/event-stream' }).flushHeaders()
}

const tooMany = {
  ok: false,
  refusal: {
    code: 'too-many-windows',
    say: 'As many windows of Duskline are open as this computer can serve.',
    next: 'Close one of them, then reload this one.',
  },
} as const

async function post(deps: RouterDeps, visit: Visit, key: string): Promise<void> {
  const name = /^\/call\/(.+)$/.exec(visit.path)?.[1]
  const id = windowId(visit, key)
  if (name === undefined || id === undefined)
    return turnAway(visit.request, visit.response, 404, 'There is nothing of that name to ask.')
  await call(deps, visit, name, id)
}

async function call(deps: RouterDeps, visit: Visit, name: string, id: string): Promise<void> {
  const { request, response } = visit
  const body = await readBody(request)
  if (!body.ok) {
    const status = body.refusal.code === 'body-too-long' ? 413 : 400
    return answerResult(response, status, body, { Connection: 'close' })
  }
  const session = deps.windows.session(id)
  if (session === undefined) return answerResult(response, 503, tooMany)
  answerResult(response, 200, await deps.desk.call(session, name, body.value))
}

/** A window's name, made by its page, together with the key: no other browser can take its place. */
function windowId({ query }: Visit, key: string): string | undefined {
  const own = query.get('window')
  return own !== null && /^[\w-]{8,64}$/.test(own) ? `${key}/${own}` : undefined
}

/** The fault goes to whoever started the program; the screen learns only that there was one. */
function answerFault(response: ServerResponse, fault: unknown): void {
  console.error(fault)
  if (response.headersSent) response.destroy()
  else answerResult(response, 500, { ok: false, refusal: deskFault })
}
