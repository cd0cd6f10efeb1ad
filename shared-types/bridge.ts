/**
 * What a screen holds of the desk, whichever window it runs in: Electron's, whose preload puts it at
 * `window.duskline`, or a browser's, where `renderer/bridge` makes the same thing over HTTP.
 */
import type { Refusal } from './result.ts'

export interface Bridge {
  /**
   * Asks the desk for one command or query. Resolves to the `Result` envelope, refusals of the
   * connection itself included; the caller parses it, since it has crossed a process.
   */
  readonly call: (name: string, input: unknown) => Promise<unknown>
  /** Tells which topics have changed, after each committed change. Returns the way to stop. */
  readonly watch: (listener: (topics: string[]) => void) => () => void
}

/** Stands alone in place of topics when news may have been missed: everything shown may be stale. */
export const anyTopic = '*'

/** What a screen hears when the desk's program met a fault of its own. */
export const deskFault: Refusal = {
  code: 'desk-fault',
  say: 'The desk met a fault of its own and cannot say whether this was kept.',
  next: 'Look whether it is in the log before you repeat it. If it happens again, restart Duskline.',
}

/** What a screen hears when nothing answers: the command may or may not have arrived. */
export const deskNotAnswering: Refusal = {
  code: 'desk-not-answering',
  say: 'The desk is not answering, so it is not certain that this was kept.',
  next: 'Wait until the desk answers, look whether it is in the log, and only then repeat it.',
}
