/**
 * Reading a station log that is not ours to change: one on a stick, of another desk, of a newer
 * version, or one that a desk is writing right now. An image of it is taken into memory, because
 * SQLite would leave files of its own beside a log it opens even to read, and a copy on disk would
 * leave names and phone numbers behind. A log is at most a few hundred megabytes.
 */
import { copyFileSync, existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { granted, type Result } from '../../shared-types/result.ts'
import {
  closedUnlessGranted,
  type Connection,
  connectForReading,
  connectInMemory,
  connectionOf,
  ReadableLog,
  WritableLog,
} from '../connection.ts'
import { latestFormat } from '../migrations/list.ts'
import { formatOf, migrateLogTables } from '../migrations/migrate.ts'
import { openingOf, torn } from './open-refusals.ts'
import { refold } from './rebuild.ts'
import { isSound, ownDeskOf } from './soundness.ts'

/**
 * Opens a log as it stands at this moment, to read only; the file and its folder stay as they are.
 * If a newer or older version wrote it, `format` says so and the read tables are folded anew.
 *
 * Refuses with `not-found`, `not-a-station-log`, `torn` or `not-readable`.
 */
export function readLog(path: string): Result<ReadableLog> {
  return openingOf(path, () => {
    const image = imageOf(path)
    if (image === null) return torn(path)
    const connection = connectInMemory(withoutWal(image))
    return closedUnlessGranted(connection, () => opened(connection, path))
  })
}

/**
 * A log of a newer version as a desk holds it, so that its screens can show it. It has the type of a log
 * that can be written, but is an image whose database refuses every write; nothing reaches the file.
 */
export function openToRead(path: string): Result<WritableLog> {
  const read = readLog(path)
  if (!read.ok) return read
  const { desk, format } = read.value
  return granted(new WritableLog(connectionOf(read.value), path, desk, format))
}

function opened(connection: Connection, path: string): Result<ReadableLog> {
  const format = formatOf(connection)
  const desk = isSound(connection) ? ownDeskOf(connection) : undefined
  if (desk === undefined) return torn(path)
  const log = new ReadableLog(connection, path, desk, format)
  if (format !== latestFormat) understand(log, connection)
  connection.pragma('query_only = ON')
  return granted(log)
}

/** Bytes 18 and 19 of the header ask for a WAL file, which an image in memory cannot have. */
export function withoutWal(image: Buffer): Buffer {
  image[18] = 1
  image[19] = 1
  return image
}

/** The bytes of the log as it stands; null if what is there cannot be read as one. */
export function imageOf(path: string): Buffer | null {
  if (existsSync(`${path}-shm`)) return imageOfOpenLog(path)
  if (existsSync(`${path}-wal`)) return imageOfLeftLog(path)
  const image = readFileSync(path)
  // A desk may have begun to write while the file was being read.
  return existsSync(`${path}-wal`) ? imageOf(path) : image
}

/** A log that a program has open, or had when it was killed: SQLite's locks give a true picture. */
function imageOfOpenLog(path: string): Buffer | null {
  const connection = connectForReading(path)
  try {
    return isSound(connection) ? connection.serialize() : null
  } finally {
    connection.close()
  }
}

/** A log whose last entries still lie in the WAL file beside it, brought here from elsewhere. */
function imageOfLeftLog(path: string): Buffer | null {
  const folder = mkdtempSync(join(tmpdir(), 'duskline-'))
  const copy = join(folder, 'copy')
  try {
    for (const part of ['', '-wal']) copyFileSync(path + part, copy + part)
    return imageOfOpenLog(copy)
  } finally {
    rmSync(folder, { recursive: true })
  }
}

/** Folds the read tables of this version, in the image alone. */
function understand(log: ReadableLog, connection: Connection): void {
  connection.transaction(() => {
    migrateLogTables(connection)
    refold(log, connection)
  })()
}
