/** Whether a message to the desk may be answered, and what it says. */
import { z } from 'zod'
import { refused } from '../../shared-types/result.ts'
import { ownOrigin } from './addresses.ts'

/** The frame a message came from, as Electron tells it. */
export interface Frame {
  readonly origin: string
  readonly parent: unknown
  /** The page has gone on, and the frame is about to go. */
  readonly detached: boolean
}

/**
 * Only the page itself may ask: not a frame inside it, not a page that took its place, and nobody
 * when the frame is no longer known.
 */
export function isOwnPage(frame: Frame | null): boolean {
  return frame !== null && frame.parent === null && !frame.detached && frame.origin === ownOrigin
}

/** Characters of JSON: room for a signature or a day's worth of corrections, none for filling the memory. */
const mostInput = 1_048_576

/** Plain data of a reasonable size; what JSON cannot hold, such as a cycle, is not a question to the desk. */
function isReasonable(input: unknown): boolean {
  try {
    return (JSON.stringify(input) ?? '').length <= mostInput
  } catch {
    return false
  }
}

/** What travels on the call channel. The input is the desk's to parse. */
export const CallMessage = z.tuple([z.string().min(1).max(100), z.unknown().refine(isReasonable)])

export const notOurPage = refused(
  'not-our-page',
  'Only the desk’s own page may ask.',
  'Close this window and open Duskline again.',
)

export const malformed = refused(
  'malformed-message',
  'The desk could not read that.',
  'Reload the window and try again.',
)
