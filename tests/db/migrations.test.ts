import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { applicationId, connectionOf } from '../../db/connection.ts'
import { chainStart, sealEntry } from '../../db/log/hash-chain.ts'
import { openLog } from '../../db/log/open.ts'
import { countEntries } from '../../db/log/read-entries.ts'
import { readLog } from '../../db/log/read-log.ts'
import { verifyLog } from '../../db/log/verify.ts'
import { entryLog } from '../../db/migrations/0010-entry-log.ts'
import { latestFormat, migrations } from '../../db/migrations/list.ts'
import type { ReadableLog } from '../../db/connection.ts'
import { closing, desk, lead, morning, tempFolder, value } from './temp-log.ts'

const addedThen = sealEntry(
  {
    desk,
    seq: 1,
    at: { ms: morning, n: 0, wall: morning },
    by: null,
    kind: 'person.added',
    v: 1,
    body: { person: lead, name: 'Ada Moss', role: 'lead', training: [] },
  },
  chainStart,
)

/** A log as its first format was: entries, and a read table that no longer exists. */
function logOfFormat10(): string {
  const path = join(tempFolder(), 'old.stationlog')
  const database = new Database(path)
  database.pragma(`application_id = ${applicationId}`)
  entryLog.up(database)
  database.exec('CREATE TABLE roster (name TEXT)')
  database.prepare('INSERT INTO own_desk (one, desk) VALUES (1, ?)').run(desk)
  const { at, by, body, kind, seq, v, prev, hash } = addedThen
  database
    .prepare('INSERT INTO entry VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)')
    .run(
      desk,
      seq,
      at.ms,
      at.n,
      at.wall,
      by,
      kind,
      v,
      JSON.stringify(bodyInOrder(body)),
      prev,
      hash,
    )
  database.pragma('user_version = 10')
  database.close()
  return path
}

const bodyInOrder = (body: object) =>
  Object.fromEntries(Object.entries(body).sort(([a], [b]) => (a < b ? -1 : 1)))

const names = (log: ReadableLog) =>
  connectionOf(log).prepare('SELECT name FROM person').pluck().all()

test('steps are numbered upwards, so that each file knows which it has seen', () => {
  const numbers = migrations.map((step) => step.number)
  expect(numbers).toEqual([...new Set(numbers)].sort((a, b) => a - b))
})

test('an older log is copied, brought up to date, and its tables rebuilt', () => {
  const path = logOfFormat10()
  const log = closing(value(openLog(path)))
  expect(names(log)).toEqual(['Ada Moss'])
  expect(verifyLog(log)).toMatchObject({ whole: true, entries: 1, readTables: 'equal' })
  log.close()
  expect(value(readLog(path)).format).toBe(latestFormat)
  const copy = value(readLog(`${path}.before-10`))
  expect([copy.format, countEntries(copy)]).toEqual([10, 1])
})

test('the copy of an older log never takes the place of an earlier copy', () => {
  const path = logOfFormat10()
  const folder = join(path, '..')
  const again = () => {
    const log = value(openLog(path))
    connectionOf(log).exec('DROP TABLE lease; DROP TABLE seal_key; PRAGMA user_version = 10')
    log.close()
  }
  again()
  again()
  expect(readdirSync(folder).sort()).toEqual([
    'old.stationlog',
    'old.stationlog.before-10',
    'old.stationlog.before-10-2',
  ])
})

test('an older log that is only read stays old, and its tables are folded in memory', () => {
  const path = logOfFormat10()
  const log = closing(value(readLog(path)))
  expect([log.format, names(log)]).toEqual([10, ['Ada Moss']])
  expect(readdirSync(join(path, '..'))).toEqual(['old.stationlog'])
})
