/** A copy of a log on another medium, made while the desk goes on working. */
import { existsSync, renameSync, rmSync } from 'node:fs'
import { basename, dirname } from 'node:path'
import { granted, type Result, refused } from '../shared-types/result.ts'
import { connectionOf, type ReadableLog } from './connection.ts'
import { countEntries, desksOf, hasEntry, headOf } from './log/read-entries.ts'
import { readLog } from './log/read-log.ts'
import { storageRefusal } from './storage-refusal.ts'

/**
 * Copies a log to a new file and reads the copy back: granted only if the copy opens and holds all
 * that the log held when the copying began. Answers how many entries the copy holds.
 *
 * Refuses with `file-exists`, `not-found` (no such folder), `copy-failed`, or as the medium does; no
 * half copy is left behind.
 */
export async function backupLog(log: ReadableLog, path: string): Promise<Result<number>> {
  if (existsSync(path)) return taken(path)
  if (!existsSync(dirname(path))) return noFolder(path)
  const part = `${path}.part`
  rmSync(part, { force: true })
  const copied = await copyAndCheck(log, part)
  if (copied.ok) renameSync(part, path)
  else rmSync(part, { force: true })
  return copied
}

async function copyAndCheck(log: ReadableLog, part: string): Promise<Result<number>> {
  const held = desksOf(log).map((desk) => ({ desk, seq: 0, hash: '', ...headOf(log, desk) }))
  try {
    await connectionOf(log).backup(part)
  } catch (error) {
    const refusal = storageRefusal(error)
    if (refusal === null) throw error
    return { ok: false, refusal }
  }
  const copy = readLog(part)
  if (!copy.ok) return copyFailed(part)
  const entries = countEntries(copy.value)
  const whole = held.every((head) => hasEntry(copy.value, head))
  copy.value.close()
  return whole ? granted(entries) : copyFailed(part)
}

function taken(path: string): Result<never> {
  return refused(
    'file-exists',
    `There is already a file ${basename(path)}.`,
    'Choose another name for the backup.',
  )
}

function noFolder(path: string): Result<never> {
  return refused(
    'not-found',
    `The folder for ${basename(path)} is not there.`,
    'Plug in the disk or stick, or choose another folder.',
  )
}

function copyFailed(part: string): Result<never> {
  return refused(
    'copy-failed',
    `The backup ${basename(part, '.part')} could not be read back.`,
    'Make the backup again on another disk or stick; this one may be failing.',
  )
}
