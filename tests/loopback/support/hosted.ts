/** A running loopback host, and requests exactly as some program on this computer could send them. */
import { randomBytes } from 'node:crypto'
import { mkdtempSync, writeFileSync } from 'node:fs'
import { type IncomingHttpHeaders, type OutgoingHttpHeaders, request } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import {
  type Loopback,
  type LoopbackDeps,
  serveLoopback,
} from '../../../electron/loopback/server.ts'
import { createNotebookDesk, type NotebookDesk } from './notebook-desk.ts'

export interface Answer {
  readonly status: number
  readonly headers: IncomingHttpHeaders
  readonly text: string
}

export interface Asking {
  readonly method?: string
  readonly headers?: OutgoingHttpHeaders
  readonly body?: string | Buffer
}

export interface Hosted extends Loopback {
  readonly desk: NotebookDesk
  readonly origin: string
  /** Sends `target` as it stands, not tidied up as a browser or `fetch` would. */
  readonly ask: (target: string, asking?: Asking) => Promise<Answer>
}

/** Screens that are only there to be fetched. */
export function plainScreens(): string {
  const folder = mkdtempSync(join(tmpdir(), 'duskline-screens-'))
  writeFileSync(join(folder, 'index.html'), '<!doctype html><title>Desk</title>')
  writeFileSync(join(folder, 'desk.js'), 'export {}')
  writeFileSync(join(folder, 'notes.md'), 'not a screen')
  return folder
}

/** Hosts a notebook desk on a free port. */
export async function host(given: Partial<LoopbackDeps> = {}): Promise<Hosted> {
  const desk = createNotebookDesk()
  const loopback = await serveLoopback({
    desk,
    screens: given.screens ?? plainScreens(),
    randomBytes,
    port: 0,
    graceMs: 200,
    onLastClosed: () => {},
    ...given,
  })
  const { port } = loopback
  const ask = (target: string, asking: Asking = {}) => send(port, target, asking)
  return { ...loopback, desk, origin: `http://127.0.0.1:${port}`, ask }
}

function send(port: number, path: string, { method, headers, body }: Asking): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const sent = request({ host: '127.0.0.1', port, path, method, headers }, (response) => {
      const chunks: Buffer[] = []
      response.on('data', (chunk: Buffer) => chunks.push(chunk))
      response.on('end', () => {
        const text = Buffer.concat(chunks).toString()
        resolve({ status: response.statusCode ?? 0, headers: response.headers, text })
      })
    })
    sent.once('error', reject)
    sent.end(body)
  })
}

/** Comes in by a fresh one-time address; answers the cookie a browser would now send. */
export async function comeIn(hosted: Hosted): Promise<string> {
  const { pathname, search } = new URL(hosted.newUrl())
  const { headers } = await hosted.ask(pathname + search)
  return headers['set-cookie']?.[0]?.split(';')[0] ?? ''
}

/** The headers of the desk's own page. */
export function ownPage(hosted: Hosted, cookie: string): Record<string, string> {
  return { Cookie: cookie, Origin: hosted.origin, 'Content-Type': 'application/json' }
}
