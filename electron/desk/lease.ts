/** Whether this laptop may go on with a log, or a copy of it lives elsewhere. */
import { basename } from 'node:path'
import type { WritableLog } from '../../db/connection.ts'
import { holderOf, setHolder } from '../../db/lease.ts'
import { transact } from '../../db/log/append.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'

/** Takes a log for this laptop if it may; the refusal if another goes on with it. */
export function takeLease(log: WritableLog, laptop: string): Result<never> | null {
  const holder = holderOf(log)
  if (holder === 'moved') return movedAway(log.path)
  if (laptop === 'free' || holder === laptop) return null
  if (holder !== 'free') return livesElsewhere(log.path)
  // No entry is written, so the clock, which may have been set back, does not matter.
  const taken = transact(log, { now: 0, by: null, acceptClock: true }, (tx) =>
    granted(setHolder(tx, laptop)),
  )
  return taken.ok ? null : taken
}

function movedAway(path: string): Result<never> {
  return refused(
    'moved-away',
    `${basename(path)} was handed over to another laptop, so it goes no further here.`,
    'Open the copy on the other laptop. If that copy was never used, a lead can take this one up again.',
    'file',
  )
}

function livesElsewhere(path: string): Result<never> {
  return refused(
    'lives-elsewhere',
    `${basename(path)} is a copy: the desk it belongs to lives on another laptop.`,
    'Go on there, or move the desk here from there. If that laptop is lost, a lead can take the desk over here.',
    'file',
  )
}
