/**
 * When a process of the program dies: word of it is kept on this laptop, and the page comes back.
 * Electron's own crash reporter is left off: what it writes is a piece of the program's memory, in which
 * a hunter's name and phone number may stand. The diary says which process, how it ended, and where.
 */
import { app, type WebContents } from 'electron'

/** A page that dies again within this time, in milliseconds, is left dead: it would die for ever. */
const tooSoonMs = 10_000

export interface CrashDeps {
  readonly uptime: () => number
  /** Keeps word of a death: which process, and how it ended. */
  readonly note: (what: string, how: string) => void
}

/** Loads a page again when its process dies; its window's person and the log live in this process. */
export function mendPages({ uptime, note }: CrashDeps, contents: WebContents): void {
  let mendedMs = Number.NEGATIVE_INFINITY
  contents.on('render-process-gone', (_event, { reason }) => {
    note('page', reason)
    if (reason === 'clean-exit' || uptime() - mendedMs < tooSoonMs) return
    mendedMs = uptime()
    contents.reload()
  })
  contents.on('unresponsive', () => note('page', 'unresponsive'))
}

/** Keeps word of a fault that is about to end this process. */
export function noteOwnDeath(noteFault: (where: string, fault: unknown) => void): void {
  process.on('uncaughtExceptionMonitor', (fault) => noteFault('program', fault))
}

/** Keeps word of Electron's other processes: Chromium starts them again by itself. */
export function noteDeaths({ note }: CrashDeps): void {
  app.on('child-process-gone', (_event, { type, reason }) => note(type, reason))
}
