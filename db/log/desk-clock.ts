/** Guards against a laptop clock that was set back: times on labels and manifests hang on it. */
import { type Result, refused } from '../../shared-types/result.ts'
import type { ReadableLog } from '../connection.ts'
import { type Params, prepareOne, prepareRun } from '../statement.ts'
import type { LogTransaction, Occasion } from './append.ts'

/** How far a clock may be set back without a word, in milliseconds: a laptop that corrects itself. */
export const clockTolerance = 10 * 60 * 1000

const wallTime = prepareOne((db) => db.selectFrom('own_desk').select('wall_ms'))

const setWallTime = prepareRun((db, p: Params<{ ms: number }>) =>
  db.updateTable('own_desk').set({ wall_ms: p('ms') }),
)

/** The latest reading of this desk's clock that the log knows, in milliseconds; 0 if none. */
export function latestWallTime(log: ReadableLog): number {
  return wallTime(log)?.wall_ms ?? 0
}

/** The refusal if the clock reads earlier than the tolerance allows; null if it may be used. */
export function clockSetBack(
  tx: LogTransaction,
  { now, acceptClock }: Occasion,
): Result<never> | null {
  const last = latestWallTime(tx)
  if (acceptClock || now >= last - clockTolerance) return null
  return refused(
    'clock-set-back',
    `The clock of this computer reads ${utc(now)}, but the last entry was made at ${utc(last)}.`,
    'Set the clock of the computer right and do it again. If the clock is right now and was wrong before, the station lead accepts it.',
  )
}

/** Keeps the latest reading of the clock, or the one the lead has accepted. */
export function noteWallTime(tx: LogTransaction, { now, acceptClock }: Occasion): void {
  setWallTime(tx, { ms: acceptClock ? now : Math.max(now, latestWallTime(tx)) })
}

function utc(ms: number): string {
  return `${new Date(ms).toISOString().slice(0, 16).replace('T', ' ')} UTC`
}
