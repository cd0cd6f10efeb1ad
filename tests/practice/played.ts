/** Practice days played for a test, in a folder that the test clears away. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll } from 'vitest'
import type { ReadableLog } from '../../db/connection.ts'
import { entriesInOrder } from '../../db/log/read-entries.ts'
import { readLog } from '../../db/log/read-log.ts'
import { understood } from '../../db/fold/fold.ts'
import { type PlayedDesk, playPracticeDay } from '../../electron/desk/practice/day.ts'
import type { KnownEntry } from '../../shared-types/entry.ts'
import type { Result } from '../../shared-types/result.ts'

/** The value of what must have been granted. */
export function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(`${result.refusal.code}: ${result.refusal.say}`)
  return result.value
}

/** A folder for the tests of one file. */
export function folderForFile(): string {
  const folder = mkdtempSync(join(tmpdir(), 'duskline-practice-'))
  afterAll(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

export async function play(
  under: string,
  wish: { seed: number; animals: number; desks: number },
): Promise<PlayedDesk[]> {
  const folder = mkdtempSync(join(under, 'day-'))
  return value(await playPracticeDay({ ...wish, folder, progress: () => undefined }))
}

/** Reads a log for as long as `read` takes. */
export function reading<T>(path: string, read: (log: ReadableLog) => T): T {
  const log = value(readLog(path))
  try {
    return read(log)
  } finally {
    log.close()
  }
}

export function entriesOf(path: string): KnownEntry[] {
  return reading(path, (log) =>
    Array.from(entriesInOrder(log), (entry) => {
      const known = understood(entry)
      if (!known) throw new Error(`${entry.kind} is not understood`)
      return known
    }),
  )
}

export function hashesOf(path: string): string[] {
  return entriesOf(path).map(({ hash }) => hash)
}

/** The entries of one kind. */
export function ofKind<K extends KnownEntry['kind']>(
  entries: readonly KnownEntry[],
  kind: K,
): Extract<KnownEntry, { kind: K }>[] {
  return entries.filter((entry): entry is Extract<KnownEntry, { kind: K }> => entry.kind === kind)
}
