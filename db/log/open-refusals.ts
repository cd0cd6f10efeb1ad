/** Why a file cannot be opened, in words for the person who chose it. */
import { basename } from 'node:path'
import Database from 'better-sqlite3'
import { type Result, refused } from '../../shared-types/result.ts'
import { storageRefusal } from '../storage-refusal.ts'
import { fileLooks } from './file-header.ts'

export function notFound(path: string): Result<never> {
  return refused(
    'not-found',
    `There is no file ${basename(path)} at this place.`,
    'Check that the disk or stick is plugged in and choose the file again.',
  )
}

export function notAStationLog(path: string): Result<never> {
  return refused(
    'not-a-station-log',
    `${basename(path)} is not a station log.`,
    'Choose a file that ends in .stationlog and was made by this program.',
  )
}

export function torn(path: string): Result<never> {
  return refused(
    'torn',
    `${basename(path)} is damaged: part of the file is missing or unreadable.`,
    'Keep the file as it is and open the latest backup; if it came on a stick, copy it from the desk again.',
  )
}

export function newerVersion(path: string): Result<never> {
  return refused(
    'newer-version',
    `${basename(path)} was written by a newer version of this program, so it opens read only here.`,
    'Look at it and print from it here, or update this program to go on writing in it.',
  )
}

function notReadable(path: string): Result<never> {
  return refused(
    'not-readable',
    `This computer does not allow ${basename(path)} to be opened.`,
    'Ask whoever looks after this computer for the right to read and write this file.',
  )
}

/** The refusal for what a file looks like from outside; null if it looks like a station log. */
export function outsideRefusal(path: string): Result<never> | null {
  switch (fileLooks(path)) {
    case 'station-log':
      return null
    case 'missing':
      return notFound(path)
    case 'foreign':
      return notAStationLog(path)
    case 'torn':
      return torn(path)
  }
}

/** Runs `open`, and turns what the file system or SQLite throws about this file into a refusal. */
export function openingOf<T>(path: string, open: () => Result<T>): Result<T> {
  try {
    return outsideRefusal(path) ?? open()
  } catch (error) {
    return openingRefusal(path, error)
  }
}

function openingRefusal(path: string, error: unknown): Result<never> {
  const code = error instanceof Error && 'code' in error ? String(error.code) : ''
  if (['EACCES', 'EPERM', 'SQLITE_CANTOPEN'].includes(code)) return notReadable(path)
  if (code === 'EISDIR') return notAStationLog(path)
  if (code === 'SQLITE_NOTADB' || code.startsWith('SQLITE_CORRUPT')) return torn(path)
  // The header says station log, but its tables are not there.
  if (error instanceof Database.SqliteError && code === 'SQLITE_ERROR') return torn(path)
  const refusal = storageRefusal(error)
  if (refusal === null) throw error
  return { ok: false, refusal }
}
