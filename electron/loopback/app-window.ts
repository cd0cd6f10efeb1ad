/** The desk in a browser window of its own, without tabs or address bar. */
import { spawn } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

export interface AppWindow {
  /** Resolves when the browser has ended, or could not start. */
  readonly ended: Promise<void>
  /** Ends the browser and removes what it kept. */
  readonly close: () => Promise<void>
}

/**
 * Opens `url`. The browser gets a profile that lives no longer than the window: nothing of the
 * station is left in a cache, and a browser already running for something else stays out of it.
 */
export async function openAppWindow(browser: string, url: string): Promise<AppWindow> {
  const profile = await mkdtemp(join(tmpdir(), 'duskline-window-'))
  const child = spawn(browser, [...appFlags(profile), ...sandboxFlags(), `--app=${url}`], {
    stdio: 'ignore',
  })
  const ended = new Promise<void>((resolve) => {
    child.once('exit', () => resolve())
    child.once('error', () => resolve())
  })
  return {
    ended,
    async close() {
      child.kill()
      await ended
      await rm(profile, { recursive: true, force: true, maxRetries: 5 })
    },
  }
}

/** Chromium refuses to run its sandbox as root; everyone else keeps it. */
export function sandboxFlags(): string[] {
  return process.getuid?.() === 0 ? ['--no-sandbox', '--test-type'] : []
}

/** No first-run pages, no calls home, no question for a key store: the laptop has no network. */
function appFlags(profile: string): string[] {
  return [
    `--user-data-dir=${profile}`,
    '--no-first-run',
    '--no-default-browser-check',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--disable-features=Translate',
    '--password-store=basic',
    '--window-size=1360,900',
  ]
}
