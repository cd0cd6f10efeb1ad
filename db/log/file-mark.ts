/**
 * Whether a log's file is still the one that was opened. A system that lets an open file be deleted or
 * replaced goes on writing into the file that is no longer there, and what was confirmed would be gone
 * with the program.
 */
import { existsSync, statSync } from 'node:fs'
import { basename, extname } from 'node:path'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import { type Connection, connectionOf, type ReadableLog } from '../connection.ts'

/** A file on its disk, whatever it is called. */
interface Mark {
  readonly device: bigint
  readonly file: bigint
}

const marks = new WeakMap<Connection, ReadonlyMap<string, Mark>>()

function markAt(path: string): Mark | undefined {
  const found = statSync(path, { bigint: true, throwIfNoEntry: false })
  return found && { device: found.dev, file: found.ino }
}

/** Remembers which file a log is, and which is its WAL, once both are open. */
export function markFile(log: ReadableLog): void {
  const found = new Map<string, Mark>()
  for (const path of [log.path, `${log.path}-wal`]) {
    const mark = markAt(path)
    if (mark) found.set(path, mark)
  }
  marks.set(connectionOf(log), found)
}

/** The refusal `file-gone` when a log's file was taken away beneath it; null while it is there. */
export function fileGone(log: ReadableLog): Result<never> | null {
  const known = marks.get(connectionOf(log)) ?? new Map<string, Mark>()
  for (const [path, mark] of known) {
    const now = markAt(path)
    if (now?.file !== mark.file || now.device !== mark.device) return gone(log.path)
  }
  return null
}

function gone(path: string): Result<never> {
  return refused(
    'file-gone',
    `The file ${basename(path)} was moved, deleted or replaced while the desk worked in it. Nothing of this action was written.`,
    'Leave Duskline open: it still holds every confirmed action. Free the disk if it is full, then do it again.',
  )
}

/**
 * Writes what a log whose file is gone still holds to a new file beside where it was, and answers with
 * its path. What was confirmed is all in it.
 */
export function rescue(log: ReadableLog): Result<string> {
  const path = freeName(log.path)
  connectionOf(log).prepare('VACUUM INTO ?').run(path)
  return granted(path)
}

function freeName(path: string): string {
  const ending = extname(path)
  const stem = path.slice(0, path.length - ending.length)
  for (let count = 1; ; count += 1) {
    const name = `${stem}-rescued${count > 1 ? `-${count}` : ''}${ending}`
    if (!existsSync(name)) return name
  }
}
