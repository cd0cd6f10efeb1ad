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

/** A folder like that of the built program: its preload, and a page that is small enough to see through. */
async function builtProgram(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'duskline-program-'))
  cpSync(await buildNotebookPage(), join(folder, 'dist/renderer'), { recursive: true })
  const outDir = join(folder, 'dist/preload')
  await build({
    configFile: join(root, 'build/vite.preload.config.ts'),
    build: { outDir, emptyOutDir: true },
  })
  return folder
}

/** Starts the program and waits for its first window. */
export async function startShell(): Promise<BrowserWindow> {
  machine.appPath = await builtProgram()
  machine.userData = mkdtempSync(join(tmpdir(), 'duskline-logs-'))
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
