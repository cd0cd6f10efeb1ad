/** The shell's real main, started against the stand-in for Electron. */
import { cpSync, mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { build } from 'vite'
import { expect, vi } from 'vitest'
import { buildNotebookPage } from '../loopback/support/page/built.ts'
import { type BrowserWindow, machine } from './stand-in/electron.ts'

const root = join(import.meta.dirname, '../..')

/** Bundles as the project does, but into a folder of the test's own. */
async function bundle(name: 'preload' | 'renderer', folder: string): Promise<void> {
  const outDir = join(folder, 'dist', name)
  const configFile = join(root, `build/vite.${name}.config.ts`)
  await build({ configFile, mode: 'production', build: { outDir, emptyOutDir: true } })
}

/** A folder like that of the built program, with its screens or a page small enough to see through. */
async function builtProgram(screens: 'real' | 'notebook'): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'duskline-program-'))
  await bundle('preload', folder)
  if (screens === 'real') await bundle('renderer', folder)
  else cpSync(await buildNotebookPage(), join(folder, 'dist/renderer'), { recursive: true })
  return folder
}

/** Starts the program and waits for its first window. */
export async function startShell(screens: 'real' | 'notebook'): Promise<BrowserWindow> {
  machine.appPath = await builtProgram(screens)
  machine.userData = mkdtempSync(join(tmpdir(), 'duskline-window-'))
  process.env.XDG_DATA_HOME = mkdtempSync(join(tmpdir(), 'duskline-home-'))
  await import('../../electron/shell/main.ts')
  await shown(0)
  return windowAt(0)
}

/** Waits until a window is there and its page is loaded. */
export async function shown(index: number): Promise<void> {
  await vi.waitFor(() => expect(machine.windows[index]?.shown).toBe(true), 10_000)
}

export function windowAt(index: number): BrowserWindow {
  const window = machine.windows[index]
  if (window === undefined) throw new Error(`There is no window ${index}.`)
  return window
}

export function pageOf(window: BrowserWindow): Promise<Page> {
  return window.webContents.ready
}

/** Sends to the main process as a script that has taken over the frame could: past the preload. */
export function forge(frame: Pick<Page, 'evaluate'>, channel: string, ...args: unknown[]) {
  return frame.evaluate(
    ([to, message]) =>
      (
        window as unknown as { invokeMain: (to: unknown, message: unknown) => Promise<unknown> }
      ).invokeMain(to, message),
    [channel, args] as const,
  )
}
