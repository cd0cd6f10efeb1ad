/** Copies of a log on another medium, made while the desk goes on working. */
import { closeSync, existsSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs'
import { basename, dirname } from 'node:path'
import { granted, type Result, refused } from '../shared-types/result.ts'
import { connectionOf, type ReadableLog } from './connection.ts'
import { countEntries, desksOf, hasEntry, headOf } from './log/read-entries.ts'
import { readLog } from './log/read-log.ts'
import { storageRefusal } from './storage-refusal.ts'

/**
 * Pages a step. After each the copy so far is put on its disk: all at once at the end, it would keep the
 * disk from the desk, whose every action waits for it.
 */
const stepPages = 512

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

/**
 * Copies a log over its last backup. The last one stays until the new one has been read back, so that
 * there is a good copy at every moment, whenever the stick is pulled.
 *
 * Refuses as `backupLog` does, and with `backup-holds-more` when the file there has entries that this
 * log lacks: then a copy has gone on elsewhere, and it would be lost.
 */
export async function renewBackup(log: ReadableLog, path: string): Promise<Result<number>> {
  if (!existsSync(dirname(path))) return noFolder(path)
  if (holdsMore(path, log)) return otherWentOn(path)
  const fresh = `${path}.new`
  try {
    rmSync(fresh, { force: true })
    const copied = await backupLog(log, fresh)
    if (copied.ok) renameSync(fresh, path)
    return copied
  } catch (error) {
    return mediumGone(path, error)
  }
}

/** Whether an earlier backup has entries of this desk that the log has not. One torn has none to lose. */
function holdsMore(path: string, log: ReadableLog): boolean {
  if (!existsSync(path)) return false
  const there = readLog(path)
  if (!there.ok) return false
  const head = headOf(there.value, there.value.desk)
  const desk = there.value.desk
  there.value.close()
  return head !== null && !hasEntry(log, { desk, ...head })
}

function otherWentOn(path: string): Result<never> {
  return refused(
    'backup-holds-more',
    `The backup ${basename(path)} has entries that this log does not have.`,
    'A copy of this desk has gone on elsewhere, or an older log was opened. Keep that backup, choose another place, and merge the two.',
  )
}

/** The file system's own errors, when a stick is pulled while its files are renamed or removed. */
function mediumGone(path: string, error: unknown): Result<never> {
  if (!(error instanceof Error && 'code' in error)) throw error
  return refused(
    'disk-failed',
    `The backup ${basename(path)} could not be written (${String(error.code)}).`,
    'Check that the disk or stick is plugged in and has room; the desk goes on without it.',
  )
}

/**
 * The library begins anew when another connection writes meanwhile: a connection that is not the desk's
 * own holds one moment of the log (a read transaction) while it copies.
 */
async function copyInSteps(log: ReadableLog, part: string): Promise<void> {
  await connectionOf(log).backup(part, {
    progress: () => {
      flush(part)
      return stepPages
    },
  })
}

function flush(path: string): void {
  const file = openSync(path, 'r+')
  try {
    fsyncSync(file)
  } finally {
    closeSync(file)
  }
}

async function copyAndCheck(log: ReadableLog, part: string): Promise<Result<number>> {
  const held = desksOf(log).map((desk) => ({ desk, seq: 0, hash: '', ...headOf(log, desk) }))
  try {
    await copyInSteps(log, part)
  } catch (error) {
    const refusal = storageRefusal(error)
    if (refusal === null) return mediumGone(part, error)
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
