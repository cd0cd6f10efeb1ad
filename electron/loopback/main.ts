/**
 * Opens the desk in a browser window, for computers without the Electron runtime.
 * The composition root of this host: here, and nowhere else, are its clock and its randomness made.
 */
import { randomBytes } from 'node:crypto'
import { mkdir } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import { holdFolder } from '../../db/folder-lock.ts'
import { createDesk, type Desk } from '../desk/desk.ts'
import { systemPrinters } from '../desk/system-printers.ts'
import { thisLaptop, usualFolder } from '../desk/this-laptop.ts'
import { type AppWindow, openAppWindow } from './app-window.ts'
import { type Options, readOptions } from './options.ts'
import { type Loopback, serveLoopback } from './server.ts'

const screens = join(import.meta.dirname, '../../dist/renderer')

/** A closed window may be a window that reloads. */
const graceMs = 5000

async function openDesk({ folder, backup }: Options): Promise<Desk> {
  const { timeZone: zone } = Intl.DateTimeFormat().resolvedOptions()
  const { platform, arch, versions } = process
  const about = { window: 'browser', system: `${platform} ${arch}`, node: versions.node }
  const machine = { laptop: thisLaptop(randomBytes), uptime: () => performance.now(), about }
  const printers = await systemPrinters(platform)
  const desk = createDesk({ folder, now: Date.now, randomBytes, zone, machine, printers })
  process.on('uncaughtExceptionMonitor', (fault) => desk.noteFault('program', fault))
  if (backup !== undefined) desk.offerBackupFolder(resolve(backup))
  return desk
}

async function main(): Promise<void> {
  const options = readOptions(process.argv.slice(2), usualFolder())
  await mkdir(options.folder, { recursive: true })
  const held = holdFolder(options.folder)
  if (!held.ok) throw new Error(`${held.refusal.say} ${held.refusal.next}`)
  const desk = await openDesk(options)
  const ending = Promise.withResolvers<void>()
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, ending.resolve)
  const host = await serveLoopback({
    desk,
    screens,
    randomBytes,
    port: options.port,
    graceMs,
    onLastClosed: () => options.window && ending.resolve(),
  })
  console.log(`Duskline is at ${host.newUrl()}`)
  const window = options.window ? await openWindow(host) : undefined
  if (window !== undefined) await sayIfNeverSeen(window, host, ending.promise)
  await ending.promise
  await host.close()
  await desk.close()
  held.value()
  await window?.close()
}

/** Whoever starts this names the browser in CHROME_PATH, if there is one. */
async function openWindow(host: Loopback): Promise<AppWindow | undefined> {
  const browser = process.env.CHROME_PATH
  if (browser) return openAppWindow(browser, host.newUrl())
  console.log('No Chromium, Chrome or Edge was found: open that address in a browser here.')
  return undefined
}

/** A browser that ends before it showed anything leaves the person with the address. */
async function sayIfNeverSeen(
  window: AppWindow,
  host: Loopback,
  ending: Promise<void>,
): Promise<void> {
  const first = await Promise.race([ending.then(() => 'ending'), window.ended.then(() => 'ended')])
  if (first === 'ended' && host.windows() === 0)
    console.log('The window did not open: open the address above in a browser on this computer.')
}

main().catch((fault: unknown) => {
  console.error(fault instanceof Error ? fault.message : fault)
  process.exitCode = 1
})
