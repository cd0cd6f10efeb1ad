/** Small JSON files beside the logs: what this laptop remembers, as opposed to what the station records. */
import { closeSync, fsyncSync, openSync, readFileSync, renameSync, writeSync } from 'node:fs'
import type { z } from 'zod'

/** Reads a small file; what is missing or unreadable counts as never written. */
export function readSmall<T extends z.ZodType>(path: string, shape: T): z.output<T> | null {
  try {
    const read = shape.safeParse(JSON.parse(readFileSync(path, 'utf8')))
    return read.success ? read.data : null
  } catch {
    return null
  }
}

/** Writes a small file whole or not at all; only this user may read it. */
export function writeSmall(path: string, content: unknown): void {
  const fresh = `${path}.new`
  const file = openSync(fresh, 'w', 0o600)
  try {
    writeSync(file, `${JSON.stringify(content, null, 2)}\n`)
    fsyncSync(file)
  } finally {
    closeSync(file)
  }
  renameSync(fresh, path)
}
