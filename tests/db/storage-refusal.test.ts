import Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { storageRefusal } from '../../db/storage-refusal.ts'

// Result codes: sqlite.org/rescode.html
test.each([
  ['SQLITE_FULL', 'disk-full'],
  ['SQLITE_IOERR_FSYNC', 'disk-failed'],
  ['SQLITE_IOERR_WRITE', 'disk-failed'],
  ['SQLITE_READONLY', 'medium-read-only'],
  ['SQLITE_READONLY_DBMOVED', 'medium-read-only'],
  ['SQLITE_BUSY', 'log-in-use'],
  ['SQLITE_BUSY_SNAPSHOT', 'log-in-use'],
  ['SQLITE_CORRUPT', 'torn'],
])('%s is told as %s, with what to do', (code, expected) => {
  const refusal = storageRefusal(new Database.SqliteError('x', code))
  expect(refusal?.code).toBe(expected)
  expect(refusal?.say).toMatch(/\.$/)
  expect(refusal?.next).toMatch(/\.$/)
})

test('an error of the program is not told as one of the disk', () => {
  expect(storageRefusal(new Database.SqliteError('no such table', 'SQLITE_ERROR'))).toBeNull()
  expect(storageRefusal(new Database.SqliteError('x', 'SQLITE_CONSTRAINT_NOTNULL'))).toBeNull()
  expect(storageRefusal(new TypeError('x'))).toBeNull()
})
