/**
 * Opens the desk in an Electron window.
 * The composition root of this host: here, and nowhere else, are its clock and its randomness made.
 */
import { randomBytes } from 'node:crypto'
import { mkdir } from 'node:fs/promises'
import { join } from 'node:path'
import { app, dialog, session } from 'electron'
import { holdFolder } from '../../db/folder-lock.ts'
import { createDesk, type Desk } from '../desk/desk.ts'
import { systemPrinters } from '../desk/system-printers.ts'
import { thisLaptop, usualFolder } from '../desk/this-laptop.ts'
import { declareScheme, serveScreens } from './app-protocol.ts'
import { type Arguments, readArguments } from './arguments.ts'
import { createAwake } from './awake.ts'
import { type CrashDeps, mendPages, noteDeaths, noteOwnDeath } from './crashes.ts'
import { answerCalls } from './ipc.ts'
import { keyStore } from './key-store.ts'
import { setMenu } from './menu.ts'
import { openedFiles } from './opened-files.ts'
import { backupFolder, logsFolder, pickFolder } from './pick-folder.ts'
import { confine, denyPermissions } from './security.ts'
import { createWindows } from './windows.ts'

const uptime = () => performance.now()

async function openDesk({ folder, file }: Arguments): Promise<Desk> {
  await mkdir(folder, { recursive: true })
  const held = holdFolder(folder)
  if (!held.ok) throw new Error(`${held.refusal.say} ${held.refusal.next}`)
  const { timeZone: zone } = Intl.DateTimeFormat().resolvedOptions()
  const { platform, arch, versions } = process
  const about = {
    version: app.getVersion(),
    window: `Electron ${versions.electron ?? ''}`,
    system: `${platform} ${arch}`,
    node: versions.node,
  }
  const machine = { laptop: thisLaptop(randomBytes), uptime, keyStore: keyStore(), about }
  const printers = await systemPrinters(platform)
  const desk = createDesk({ folder, now: Date.now, randomBytes, zone, machine, printers })
  // Refused, it is on the shelf all the same, and the shelf says why it cannot be opened.
  if (file !== undefined) await desk.call(desk.openSession(), 'shelf.open', { file })
  return desk
}

/** Keeps the laptop awake while a log is open, and tells every window what changed. */
function watchDesk(desk: Desk, tell: (topics: readonly string[]) => void): void {
  const awake = createAwake()
  const isOpen = async () => {
    const look = desk.openSession()
    const shelf = await desk.call(look, 'shelf.look', {})
    desk.closeSession(look)
    awake.set(shelf.ok && shelf.value.open !== null)
  }
  void isOpen()
  desk.watch((topics) => {
    tell(topics)
    if (topics.includes('shelf')) void isOpen()
  })
}

async function start(): Promise<void> {
  const opened = openedFiles()
  await app.whenReady()
  const args = [...process.argv.slice(1), ...opened.paths]
  const desk = await openDesk(readArguments(args, usualFolder()))
  noteOwnDeath((where, fault) => desk.noteFault(where, fault))
  const note: CrashDeps['note'] = (what, how) => desk.noteFault(`${what} ${how}`, undefined)
  const windows = createWindows(desk, {
    preload: join(app.getAppPath(), 'dist/preload/preload.cjs'),
    state: join(app.getPath('userData'), 'window.json'),
  })
  app.on('web-contents-created', (_event, contents) => {
    confine(contents, windows.open)
    mendPages({ uptime, note }, contents)
  })
  noteDeaths({ uptime, note })
  app.on('second-instance', windows.show)
  opened.onLater(windows.show)
  app.on('window-all-closed', () => app.quit())
  app.once('will-quit', (event) => {
    // The log is closed first, so that nothing is left beside it.
    event.preventDefault()
    void desk.close().finally(() => app.exit())
  })
  denyPermissions(session.defaultSession)
  serveScreens(join(app.getAppPath(), 'dist/renderer'))
  answerCalls(desk, windows.sessionOf)
  watchDesk(desk, windows.tell)
  setMenu({
    openWindow: windows.open,
    openBoard: windows.openBoard,
    pickBackupFolder: () => void pickFolder(backupFolder, (path) => desk.offerBackupFolder(path)),
    pickLogsFolder: () => void pickFolder(logsFolder, (path) => desk.offerLogsFolder(path)),
  })
  windows.open()
}

function giveUp(fault: unknown): void {
  dialog.showErrorBox(
    'Duskline cannot start',
    fault instanceof Error ? fault.message : String(fault),
  )
  app.exit(1)
}

app.enableSandbox()
declareScheme()
if (app.requestSingleInstanceLock()) start().catch(giveUp)
else app.quit()
