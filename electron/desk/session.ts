/** Who sits at a window. A quick change of person here changes nobody at another window. */
import type { PersonId } from '../../shared-types/sample-number.ts'

export interface Session {
  readonly id: string
  person: PersonId | null
  /** When whoever sits here last did something, by the clock that nobody can set. */
  seenMs?: number
}

/** A window left alone this long is locked: whoever passes by must not act under another's name. */
export const idleLockMs = 15 * 60_000

/** Locks a window that was left alone; true if somebody was signed in there. */
export function lockIfIdle(session: Session, uptimeMs: number): boolean {
  const isIdle = session.person !== null && uptimeMs - (session.seenMs ?? uptimeMs) > idleLockMs
  if (isIdle) session.person = null
  return isIdle
}
