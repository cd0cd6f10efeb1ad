import { createHash } from 'node:crypto'
import { mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { beforeAll, expect, test } from 'vitest'
import { openLog } from '../../db/log/open.ts'
import { rebuildReadTables } from '../../db/log/rebuild.ts'
import { verifyLog } from '../../db/log/verify.ts'
import { mergeLogs } from '../../db/merge/merge.ts'
import { value } from '../db/temp-log.ts'
import { contentOf, type FileFate, folderForAll, meet, playedLogs, sticks } from './histories.ts'

const folder = folderForAll()
let logs: string[]

beforeAll(async () => {
  logs = await playedLogs(folder, { desks: 3, animals: 15 })
}, 120_000)

let runs = 0

/** Lays the files of a stick out and hands their paths over; they are gone afterwards. */
function withStick<T>(stick: readonly FileFate[], act: (files: string[], at: string) => T): T {
  runs += 1
  const at = join(folder, `run-${runs}`)
  mkdirSync(at)
  try {
    const files = stick.map(({ log, fate }, place) => {
      const path = join(at, `${place}.stationlog`)
      meet(logs[log] ?? '', fate, path)
      return path
    })
    return act(files, at)
  } finally {
    rmSync(at, { recursive: true, force: true })
  }
}

function merged(files: readonly string[], out: string) {
  value(mergeLogs({ out, files, office: null }))
  return contentOf(out)
}

const fingerprint = (path: string) => createHash('sha256').update(readFileSync(path)).digest('hex')

// 500 histories of several desks with forks, gaps, cuts and altered entries.
test('a merge does not depend on the order, the grouping or the repetition of files', () => {
  fc.assert(
    fc.property(sticks(3), fc.nat(), (stick, turn) =>
      withStick(stick, (files, at) => {
        const before = files.map(fingerprint)
        const all = merged(files, join(at, 'all.merged'))
        const turned = files
          .map((_, place) => files[(place + turn) % files.length] ?? '')
          .toReversed()
        expect(merged(turned, join(at, 'turned.merged'))).toEqual(all)

        const cut = 1 + (turn % (files.length - 1))
        merged(files.slice(0, cut), join(at, 'first.merged'))
        merged(files.slice(cut), join(at, 'second.merged'))
        const pieces = ['first.merged', 'second.merged'].map((piece) => join(at, piece))
        expect(merged(pieces, join(at, 'pieces.merged'))).toEqual(all)
        expect(merged(files, join(at, 'pieces.merged'))).toEqual(all)

        expect(files.map(fingerprint)).toEqual(before)
        expect(readdirSync(at).filter((name) => name.endsWith('.part'))).toEqual([])
      }),
    ),
    { numRuns: 500, endOnFailure: true },
  )
}, 1_800_000)

test('a merged log is a station log: its read tables are those of a rebuild, and merging goes on', () => {
  fc.assert(
    fc.property(sticks(3), (stick) =>
      withStick(stick, (files, at) => {
        const out = join(at, 'all.merged')
        const all = merged(files, out)
        const log = value(openLog(out))
        const report = verifyLog(log)
        expect(report.readTables).toBe('equal')
        expect(report.findings.filter(({ what }) => what === 'altered')).toEqual([])
        value(rebuildReadTables(log))
        log.close()
        expect(contentOf(out)).toEqual(all)
      }),
    ),
    { numRuns: 60 },
  )
}, 200_000)
