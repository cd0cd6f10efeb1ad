/** Refusals that any call can meet. */
import { basename } from 'node:path'
import type { z } from 'zod'
import { type Result, refused } from '../../shared-types/result.ts'

export function unknownCall(name: string): Result<never> {
  return refused(
    'unknown-call',
    `This desk does not know the call ${name.slice(0, 60)}.`,
    'Use a name of the desk API.',
  )
}

export function noLogOpen(): Result<never> {
  return refused(
    'no-log-open',
    'No station log is open at this desk.',
    'Set up a station, open one of the logs in the folder, or open a practice day.',
  )
}

/** A log whose set-up was cut short: it holds no station. */
export function neverSetUp(path: string): Result<never> {
  return refused(
    'never-set-up',
    `${basename(path)} was begun but never set up.`,
    'Set up the station again under a new name.',
    'file',
  )
}

/** The first thing wrong with what came in, in words, and the field it is in. */
export function badInput(error: z.ZodError): Result<never> {
  const [issue] = error.issues
  const field = issue?.path.join('.') ?? ''
  const what = issue?.message ?? 'something is missing'
  return refused(
    'bad-input',
    field === '' ? `That does not fit: ${what}.` : `${field}: ${what}.`,
    'Correct it and try again.',
    field === '' ? undefined : field,
  )
}

/** Four digits are used up: the numbers of one desk letter are at their end. */
export function serialsExhausted(what: string): Result<never> {
  return refused(
    'serials-exhausted',
    `This desk has given out all 9999 numbers it has for ${what}.`,
    'Close this log and set up the desk under another letter.',
  )
}

/** A merged log that nobody can sign in to: no office has set itself up over it. */
export function noOfficeYet(file: string): Result<never> {
  return refused(
    'no-office-yet',
    `${file} is a merged log that no office has taken up yet.`,
    'Set up the office for it on the merge screen.',
    'file',
  )
}

export function handoffNotSigned(): Result<never> {
  return refused(
    'handoff-not-signed',
    'This handoff is not signed yet.',
    'Sign it first; then its manifest can be printed.',
    'handoff',
  )
}
