/** When a process of the program dies: word of it is kept on this laptop, and the page comes back. */
import { app, crashReporter, type WebContents } from 'electron'

/** A page that dies again within this time, in milliseconds, is left dead: it would die for ever. */
const tooSoonMs = 10_000

export interface CrashDeps {
  readonly uptime: () => number
  /** Keeps word of a death: which process, and how it ended. */
  readonly note: (what: string, how: string) => void
}

/** Crash reports stay on this laptop, in Electron's own folder, and are sent nowhere. */
export function keepCrashReports(): void {
  crashReporter.start({ uploadToServer: false, compress: true })
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

/** Keeps word of Electron's other processes: Chromium starts them again by itself. */
export function noteDeaths({ note }: CrashDeps): void {
  app.on('child-process-gone', (_event, { type, reason }) => note(type, reason))
}
