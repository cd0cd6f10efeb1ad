/** The desk and its screens on 127.0.0.1, for the browsers of this computer alone. */
import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import type { Desk } from '../desk/desk.ts'
import { originAt } from './guard.ts'
import { createKeys } from './keys.ts'
import { createRouter } from './router.ts'
import { readScreens } from './screens.ts'
import { createWindows } from './windows.ts'

export interface LoopbackDeps {
  readonly desk: Desk
  /** The folder of the built screens. */
  readonly screens: string
  readonly randomBytes: (n: number) => Uint8Array
  /** 0 takes any free port. */
  readonly port: number
  /** Milliseconds that a window may be gone before it counts as closed. */
  readonly graceMs: number
  /** Called when windows were open and the last one has closed. */
  readonly onLastClosed: () => void
}

export interface Loopback {
  readonly port: number
  /** An address that opens one window, once. */
  readonly newUrl: () => string
  /** How many windows are open. */
  readonly windows: () => number
  /** Ends every window's news, lets commands under way finish and stops listening. */
  readonly close: () => Promise<void>
}

/** What commands under way get to finish when the desk stops. */
const lastAnswersMs = 500

/** Starts to serve. Rejects with one plain sentence when the port is taken or the screens are not built. */
export async function serveLoopback(deps: LoopbackDeps): Promise<Loopback> {
  const screens = await readScreens(deps.screens)
  const keys = createKeys(deps.randomBytes)
  const windows = createWindows(deps.desk, deps.graceMs, deps.onLastClosed)
  const server = createServer({ requestTimeout: 30_000 })
  const port = await listen(server, deps.port)
  const newUrl = () => `${originAt(port)}/enter?token=${keys.newToken()}`
  server.on('request', createRouter({ desk: deps.desk, screens, keys, windows, port }))
  const unwatch = deps.desk.watch(windows.tell)
  return {
    port,
    newUrl,
    windows: windows.count,
    async close() {
      unwatch()
      windows.close()
      await stop(server)
    },
  }
}

/** Binds the loopback address and no other: nobody on a network can reach it. */
function listen(server: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', (fault: NodeJS.ErrnoException) => reject(sayTaken(fault, port)))
    server.listen(port, '127.0.0.1', () => resolve((server.address() as AddressInfo).port))
  })
}

function sayTaken(fault: NodeJS.ErrnoException, port: number): Error {
  if (fault.code !== 'EADDRINUSE') return fault
  return new Error(`Port ${port} is taken by another program: name another, or none.`)
}

/** A browser keeps connections open without using them, and would keep us waiting for them. */
function stop(server: Server): Promise<void> {
  return new Promise((resolve) => {
    const cut = setTimeout(() => server.closeAllConnections(), lastAnswersMs)
    server.close(() => {
      clearTimeout(cut)
      resolve()
    })
  })
}
