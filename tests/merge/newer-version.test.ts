import { copyFileSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, expect, test } from 'vitest'
import { type Connection, connectionOf } from '../../db/connection.ts'
import { canonicalJson } from '../../db/canonical-json.ts'
import { entryHash } from '../../db/log/hash-chain.ts'
import { openLog } from '../../db/log/open.ts'
import { headOf, latestStamp } from '../../db/log/read-entries.ts'
import { verifyLog } from '../../db/log/verify.ts'
import { mergeInThreads } from '../../db/merge/in-threads.ts'
import { mergeLogs } from '../../db/merge/merge.ts'
import { stopSign } from '../../db/merge/merge-files.ts'
import { latestFormat } from '../../db/migrations/list.ts'
import type { DeskId } from '../../shared-types/sample-number.ts'
import { value } from '../db/temp-log.ts'
import { contentOf, folderForAll, playedLogs } from './histories.ts'

const folder = folderForAll()
let logs: string[]

beforeAll(async () => {
  logs = await playedLogs(folder, { desks: 2, animals: 12 })
}, 120_000)

/** A copy of the first log as a program of later years would have left it. */
function ofLaterYears(
  name: string,
  change: (connection: Connection, desk: DeskId) => void,
): string {
  const path = join(folder, name)
  copyFileSync(logs[0] ?? '', path)
  const log = value(openLog(path))
  const connection = connectionOf(log)
  change(connection, log.desk)
  connection.pragma(`user_version = ${latestFormat + 40}`)
  log.close()
  return path
}

/** An entry of a kind that this version has never heard of, chained as any other. */
function appendUnknown(connection: Connection, desk: DeskId, path: string): void {
  const log = value(openLog(path))
  const { seq, hash: prev } = headOf(log, desk) ?? { seq: 0, hash: '' }
  const { ms } = latestStamp(log)
  log.close()
  const body = canonicalJson({ animal: null, over: 'the ridge', minutes: 12 })
  const at = { ms: ms + 1, n: 0, wall: ms + 1 }
  const entry = { desk, seq: seq + 1, at, by: null, kind: 'drone.flown', v: 3 }
  connection
    .prepare('INSERT INTO entry VALUES (?, ?, ?, 0, ?, NULL, ?, 3, ?, ?, ?)')
    .run(desk, seq + 1, at.ms, at.wall, entry.kind, body, prev, entryHash(prev, entry, body))
}

function countIn(path: string): number {
  const log = value(openLog(path))
  const count = connectionOf(log).prepare<[], number>('SELECT count(*) FROM entry').pluck().get()
  log.close()
  return count ?? 0
}

test('a file of a newer version is named as one, and all of it that proves itself comes in', async () => {
  const newer = ofLaterYears('newer.stationlog', (connection, desk) => {
    appendUnknown(connection, desk, logs[0] ?? '')
    connection.exec('CREATE TABLE drone (flown TEXT) STRICT')
    connection.exec('DROP TABLE animal; ALTER TABLE bag ADD COLUMN weighed REAL')
  })
  const bytes = readFileSync(newer)
  const files = [newer, logs[1] ?? '']
  const out = join(folder, 'one.merged')
  const report = value(mergeLogs({ out, files, office: null }))
  expect(report.files.map(({ state }) => state)).toEqual(['newer-version', 'whole'])
  expect(report.notUnderstood).toBe(1)
  expect(report.added).toBe(countIn(logs[0] ?? '') + 1 + countIn(logs[1] ?? ''))
  expect(readFileSync(newer).equals(bytes)).toBe(true)

  // What is not understood is kept and passed on; the merged log itself is of this version.
  const log = value(openLog(out))
  expect(log.format).toBe(latestFormat)
  expect(verifyLog(log)).toMatchObject({ whole: true, notUnderstood: 1, readTables: 'equal' })
  const kept = connectionOf(log).prepare("SELECT body FROM entry WHERE kind = 'drone.flown'")
  expect(kept.all()).toHaveLength(1)
  log.close()
  const again = join(folder, 'again.merged')
  value(mergeLogs({ out: again, files: [out], office: null }))
  expect(contentOf(again)).toEqual(contentOf(out))

  const parts = join(folder, 'parts.merged')
  const watch = { progress: () => undefined, stop: stopSign() }
  value(await mergeInThreads({ out: parts, files, office: null }, [[0], [1]], watch))
  expect(contentOf(parts)).toEqual(contentOf(out))
}, 60_000)

test('what a newer version hashes by a rule of its own is set aside and named, entry by entry', () => {
  const newer = ofLaterYears('other-rule.stationlog', (connection) => {
    connection.exec(`DROP TRIGGER entry_is_never_changed;
      ALTER TABLE entry ADD COLUMN weather TEXT;
      UPDATE entry SET weather = 'snow', hash = substr(hash, 2) || '0' WHERE seq > 10`)
  })
  const out = join(folder, 'set-aside.merged')
  const report = value(mergeLogs({ out, files: [newer], office: null }))
  const all = countIn(logs[0] ?? '')
  expect(report.files).toMatchObject([{ state: 'newer-version', added: 10, unreadable: 0 }])
  const [file] = report.files
  expect(file?.state === 'newer-version' && file.altered).toHaveLength(all - 10)
  const log = value(openLog(out))
  const setAside = connectionOf(log)
    .prepare<[], number>("SELECT count(*) FROM unproved WHERE what = 'altered'")
    .pluck()
    .get()
  expect(setAside).toBe(all - 10)
  log.close()
})

test('nothing is merged into a log of a newer version, which stays as it is', () => {
  const newer = ofLaterYears('target.stationlog', () => undefined)
  const bytes = readFileSync(newer)
  const merged = mergeLogs({ out: newer, files: [logs[1] ?? ''], office: null })
  expect(merged).toMatchObject({ ok: false, refusal: { code: 'newer-version' } })
  expect(readFileSync(newer).equals(bytes)).toBe(true)
})
