import { copyFileSync, readFileSync, truncateSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, expect, test } from 'vitest'
import { connectionOf } from '../../db/connection.ts'
import { createLog } from '../../db/log/create.ts'
import { glanceAt } from '../../db/log/glance.ts'
import { openLog } from '../../db/log/open.ts'
import { countEntries, latestStamp } from '../../db/log/read-entries.ts'
import { readLog } from '../../db/log/read-log.ts'
import { mergeLogs } from '../../db/merge/merge.ts'
import { stationOf } from '../../db/read/station.ts'
import { DeskId } from '../../shared-types/sample-number.ts'
import { folderForAll, playedLogs } from '../merge/histories.ts'
import { value } from './temp-log.ts'

const folder = folderForAll()
let logs: string[]

beforeAll(async () => {
  logs = await playedLogs(folder, { desks: 2, animals: 60 })
}, 120_000)

/** What opening the log says of the same things. */
function readInFull(path: string) {
  const log = value(readLog(path))
  const station = stationOf(log)
  const { desk } = log
  const seen = {
    desk,
    entries: countEntries(log),
    lastMs: latestStamp(log).ms,
    station: station && {
      desk,
      name: station.name,
      practice: station.practice,
      office: station.office,
    },
  }
  log.close()
  return seen
}

test('a glance at a log says what opening it says', () => {
  const merged = join(folder, 'merged.stationlog')
  value(mergeLogs({ out: merged, files: logs, office: null }))
  for (const path of [...logs, merged]) expect(glanceAt(path)).toEqual(readInFull(path))
})

test('a log that was never written in is seen as it is', () => {
  const path = join(folder, 'new.stationlog')
  const desk = DeskId.parse('26KRVA')
  value(createLog(path, desk)).close()
  expect(glanceAt(path)).toEqual({ desk, entries: 0, lastMs: null, station: null })
})

test('a glance changes nothing, and does not do where entries lie beside the file', () => {
  const [path = ''] = logs
  const before = readFileSync(path)
  glanceAt(path)
  expect(readFileSync(path).equals(before)).toBe(true)
  const open = value(openLog(path))
  connectionOf(open).exec('BEGIN IMMEDIATE; COMMIT')
  expect(glanceAt(path)).toBeNull()
  open.close()
})

test('a file cut short, a newer version and what is no log are left to those who open them', () => {
  const [path = ''] = logs
  const copy = join(folder, 'copy.stationlog')
  copyFileSync(path, copy)
  truncateSync(copy, 20_000)
  expect(glanceAt(copy)).toBeNull()
  const newer = readFileSync(path)
  newer.writeUInt32BE(9999, 60)
  writeFileSync(copy, newer)
  expect(glanceAt(copy)).toBeNull()
  writeFileSync(copy, 'milk, bread, bleach')
  expect(glanceAt(copy)).toBeNull()
  expect(glanceAt(join(folder, 'nowhere'))).toBeNull()
})

test('whatever a page was overwritten with, a glance ends and does not fail', () => {
  const [path = ''] = logs
  const copy = join(folder, 'spoiled.stationlog')
  const bytes = readFileSync(path)
  for (let page = 0; page < bytes.length / 4096; page += 1)
    for (const fill of [0, 2, 5, 13, 255]) {
      const spoiled = Buffer.from(bytes)
      spoiled.fill(fill, Math.max(100, page * 4096), (page + 1) * 4096)
      writeFileSync(copy, spoiled)
      expect(() => glanceAt(copy)).not.toThrow()
    }
})
