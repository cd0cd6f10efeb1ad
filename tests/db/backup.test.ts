import { readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { backupLog } from '../../db/backup.ts'
import { connectInMemory, connectionOf, ReadableLog } from '../../db/connection.ts'
import { openLog } from '../../db/log/open.ts'
import { entriesInOrder, headOf } from '../../db/log/read-entries.ts'
import { readLog } from '../../db/log/read-log.ts'
import { verifyLog } from '../../db/log/verify.ts'
import { latestFormat } from '../../db/migrations/list.ts'
import { draft } from '../../shared-types/entry.ts'
import {
  closing,
  desk,
  lead,
  morning,
  refusal,
  tempFolder,
  tempLog,
  value,
  work,
} from './temp-log.ts'

const signedIn = draft('person.signed-in', { person: lead })

test('a backup of an open log holds every entry, and the desk can go on in it', async () => {
  const log = tempLog()
  const entries = work(log, [signedIn, signedIn, signedIn])
  const path = join(tempFolder(), 'stick.stationlog')
  expect(value(await backupLog(log, path))).toBe(3)
  const copy = closing(value(openLog(path)))
  expect([...entriesInOrder(copy)]).toEqual(entries)
  work(copy, [signedIn], morning + 60_000)
  expect(verifyLog(copy)).toMatchObject({ whole: true, entries: 4 })
})

test('a backup is one file, with nothing left beside it', async () => {
  const folder = tempFolder()
  value(await backupLog(tempLog(), join(folder, 'stick.stationlog')))
  expect(readdirSync(folder)).toEqual(['stick.stationlog'])
})

test('work that goes on during a backup is not held up, and the backup is whole', async () => {
  const log = tempLog()
  const long = draft('day.reopened', { date: '2026-11-14', reason: 'x'.repeat(200) } as never)
  work(
    log,
    Array.from({ length: 2000 }, () => long),
  )
  const path = join(tempFolder(), 'stick.stationlog')
  const backup = backupLog(log, path)
  await new Promise((resolve) => setImmediate(resolve))
  work(log, [signedIn], morning + 3_600_000)
  value(await backup)
  const copy = closing(value(readLog(path)))
  expect(headOf(copy, desk)?.seq).toBeGreaterThanOrEqual(2000)
  expect(verifyLog(copy).whole).toBe(true)
})

test('a backup that cannot be read back is refused, and no half copy is left', async () => {
  const log = tempLog()
  work(log, [signedIn])
  const root = connectionOf(log)
    .prepare<[], number>("SELECT rootpage FROM sqlite_schema WHERE name = 'animal'")
    .pluck()
    .get() as number
  const spoilt = connectionOf(log).serialize()
  // Bytes 18 and 19 ask for a WAL file, which an image in memory cannot have.
  spoilt[18] = spoilt[19] = 1
  spoilt.fill(0x5a, (root - 1) * 4096, (root - 1) * 4096 + 64)
  const failing = closing(new ReadableLog(connectInMemory(spoilt), 'spoilt', desk, latestFormat))
  const folder = tempFolder()
  expect(refusal(await backupLog(failing, join(folder, 'stick.stationlog')))).toBe('copy-failed')
  expect(readdirSync(folder)).toEqual([])
})

test('a backup never takes the place of a file, and says when the stick is not there', async () => {
  const log = tempLog()
  const path = join(tempFolder(), 'stick.stationlog')
  writeFileSync(path, 'something else')
  expect(refusal(await backupLog(log, path))).toBe('file-exists')
  expect(refusal(await backupLog(log, join(path, '..', 'gone', 'a')))).toBe('not-found')
})
