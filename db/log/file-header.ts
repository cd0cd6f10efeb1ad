/**
 * What a file says it is before any of it is trusted.
 * Source: SQLite database file format, section 1.3 "The Database Header" (sqlite.org/fileformat2.html).
 */
import { closeSync, openSync, readSync } from 'node:fs'
import { applicationId } from '../connection.ts'

const headerLength = 100
const magic = 'SQLite format 3\0'

export type FileLooks = 'station-log' | 'torn' | 'foreign' | 'missing'

/** What a file looks like from its first 100 bytes. Throws if it cannot be read though it is there. */
export function fileLooks(path: string): FileLooks {
  const header = firstBytes(path)
  if (header === null) return 'missing'
  if (header.toString('latin1', 0, magic.length) !== magic) return 'foreign'
  if (header.length < headerLength) return 'torn'
  return header.readInt32BE(68) === applicationId ? 'station-log' : 'foreign'
}

function firstBytes(path: string): Buffer | null {
  const header = Buffer.alloc(headerLength)
  const file = openIfThere(path)
  if (file === null) return null
  try {
    return header.subarray(0, readSync(file, header))
  } finally {
    closeSync(file)
  }
}

function openIfThere(path: string): number | null {
  try {
    return openSync(path, 'r')
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null
    throw error
  }
}
