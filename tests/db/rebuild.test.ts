import fc from 'fast-check'
import { expect, test } from 'vitest'
import { connectionOf, type ReadableLog } from '../../db/connection.ts'
import { rebuildReadTables } from '../../db/log/rebuild.ts'
import { verifyLog } from '../../db/log/verify.ts'
import { readTablesOf } from '../../db/migrations/migrate.ts'
import type { EntryDraft } from '../../shared-types/entry.ts'
import { allKinds, draftOf } from './some-drafts.ts'
import { refusal, tempLog, value, work } from './temp-log.ts'

const oneOfEach = allKinds.flatMap((kind) => fc.sample(draftOf(kind), { numRuns: 1, seed: 11 }))

function tablesOf(log: ReadableLog) {
  const connection = connectionOf(log)
  const rows = (table: string) => connection.prepare(`SELECT * FROM "${table}" ORDER BY 1, 2`).all()
  return Object.fromEntries(readTablesOf(connection).map((table) => [table, rows(table)]))
}

test('a rebuild makes the very same tables again, from every kind of entry', () => {
  const log = tempLog()
  work(log, oneOfEach)
  const before = tablesOf(log)
  const told: number[] = []
  const rebuilt = rebuildReadTables(log, (done, total) => told.push(done / total))
  expect(value(rebuilt)).toEqual({ entries: allKinds.length, notUnderstood: 0 })
  expect(tablesOf(log)).toEqual(before)
  expect(told.at(-1)).toBe(1)
})

test('a rebuild puts right what was spoilt, and clears tables that no longer belong', () => {
  const log = tempLog()
  work(log, oneOfEach)
  connectionOf(log).exec(
    "UPDATE animal SET tag = 'x'; DROP TABLE label; CREATE TABLE roster (a); DELETE FROM person",
  )
  expect(verifyLog(log).readTables).toBe('differ')
  value(rebuildReadTables(log))
  expect(verifyLog(log)).toMatchObject({ whole: true, readTables: 'equal' })
})

test('a rebuild passes over entries of a later version and counts them', () => {
  const log = tempLog()
  const ofLaterKind = { kind: 'drone.landed', v: 1, body: {} } as unknown as EntryDraft
  const ofLaterBody = { kind: 'pin.set', v: 2, body: { badge: 1 } } as unknown as EntryDraft
  work(log, [ofLaterKind, ofLaterBody])
  expect(value(rebuildReadTables(log))).toEqual({ entries: 2, notUnderstood: 2 })
})

test('a rebuild that the disk stops leaves the tables as they were', () => {
  const log = tempLog()
  work(log, oneOfEach)
  const before = tablesOf(log)
  connectionOf(log).pragma('query_only = ON')
  expect(refusal(rebuildReadTables(log))).toBe('medium-read-only')
  connectionOf(log).pragma('query_only = OFF')
  expect(tablesOf(log)).toEqual(before)
})
