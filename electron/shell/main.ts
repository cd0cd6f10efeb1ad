/**
 * Opens the desk in an Electron window.
 * The composition root of this host: here, and nowhere else, are its clock and its randomness made.
 */
import { randomBytes } from 'node:crypto'
import { mkdir } from 'node:fs/promises'
import { join } from 'node:path'
import { app, dialog, session } from 'electron'
import { createDesk, type Desk } from '../desk/desk.ts'
import { declareScheme, serveScreens } from './app-protocol.ts'
import { readFolder } from './folder.ts'
import { answerCalls } from './ipc.ts'
import { setMenu } from './menu.ts'
import { confine, denyPermissions } from './security.ts'
import { createWindows } from './windows.ts'

async function openDesk(): Promise<Desk> {
  const folder = readFolder(process.argv.slice(1), app.getPath('userData'))
  await mkdir(folder, { recursive: true })
  const { timeZone: zone } = Intl.DateTimeFormat().resolvedOptions()
  return createDesk({ folder, now: Date.now, randomBytes, zone })
}

async function start(): Promise<void> {
  await app.whenReady()
  const desk = await openDesk()
  const windows = createWindows(desk, join(app.getAppPath(), 'dist/preload/preload.cjs'))
  app.on('web-contents-created', (_event, contents) => confine(contents, windows.open))
  app.on('second-instance', windows.show)
  app.on('window-all-closed', () => app.quit())
  app.once('will-quit', (event) => {
    // The log is closed first, so that nothing is left beside it.
    event.preventDefault()
    void desk.close().finally(() => app.exit())
  })
  denyPermissions(session.defaultSession)
  serveScreens(join(app.getAppPath(), 'dist/renderer'))
  answerCalls(desk, windows.sessionOf)
  desk.watch(windows.tell)
  setMenu(windows.open)
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
