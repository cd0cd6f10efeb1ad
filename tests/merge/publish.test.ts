import { join } from 'node:path'
import pg from 'pg'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { connectionOf, type ReadableLog } from '../../db/connection.ts'
import { transact } from '../../db/log/append.ts'
import { openLog } from '../../db/log/open.ts'
import { readLog } from '../../db/log/read-log.ts'
import { mergeLogs } from '../../db/merge/merge.ts'
import { readTablesOf } from '../../db/migrations/migrate.ts'
import { publishLog } from '../../db/publish/publish.ts'
import { draft } from '../../shared-types/entry.ts'
import { granted } from '../../shared-types/result.ts'
import { refusal, value } from '../db/temp-log.ts'
import { type RunningServer, serverPrograms, startPostgres } from '../support/postgres.ts'
import { folderForAll, playedLogs } from './histories.ts'

const folder = folderForAll()
const programs = serverPrograms()

test('what is no server, or does not answer, is refused in words', async () => {
  const [log] = await playedLogs(folder, { desks: 1, animals: 12 })
  const read = value(readLog(log ?? ''))
  expect(refusal(await publishLog(read, 'mysql://somewhere/x'))).toBe('not-a-server')
  expect(refusal(await publishLog(read, 'postgres://office@127.0.0.1:1/x'))).toBe(
    'server-not-reached',
  )
  read.close()
}, 60_000)

describe.skipIf(programs === undefined)(
  'publishing to a PostgreSQL server (skipped where Debian package postgresql is not installed)',
  () => {
    let server: RunningServer
    let client: pg.Client
    let logs: string[]

    beforeAll(async () => {
      server = await startPostgres(programs ?? '')
      client = new pg.Client(server.address)
      await client.connect()
      logs = await playedLogs(folder, { desks: 2, animals: 24, seed: 9 })
    }, 120_000)
    afterAll(async () => {
      await client.end()
      await server.stop()
    })

    const merged = (name: string, files: readonly string[]) => {
      const out = join(folder, name)
      value(mergeLogs({ out, files, office: null }))
      return out
    }
    const plain = (rows: readonly object[]) =>
      rows
        .map((row) =>
          JSON.stringify(
            Object.entries(row)
              .map(([name, cell]) => [name, typeof cell === 'number' ? String(cell) : cell])
              .toSorted(([a], [b]) => ((a ?? '') < (b ?? '') ? -1 : 1)),
          ),
        )
        .toSorted()
    const here = (log: ReadableLog, table: string) =>
      plain(connectionOf(log).prepare<[], object>(`SELECT * FROM "${table}"`).all())
    const there = async (table: string) =>
      plain((await client.query(`SELECT * FROM "${table}"`)).rows)

    test('two offices that publish different stations end with one record of both', async () => {
      const [first, second] = [merged('first', logs.slice(0, 1)), merged('second', logs.slice(1))]
      const one = value(readLog(first))
      const two = value(readLog(second))
      value(await publishLog(one, server.address))
      const published = value(await publishLog(two, server.address))
      expect(published.ofOthers).toBeGreaterThan(0)

      const both = value(readLog(merged('both', logs)))
      for (const table of ['entry', ...readTablesOf(connectionOf(both))])
        expect(await there(table), table).toEqual(here(both, table))

      const again = value(await publishLog(one, server.address))
      expect(again).toMatchObject({ added: 0, entries: published.entries })
      for (const table of ['entry', ...readTablesOf(connectionOf(both))])
        expect(await there(table), table).toEqual(here(both, table))
      for (const log of [one, two, both]) log.close()
    }, 60_000)

    test('a later correction reaches the server; contacts, PINs and keys never do', async () => {
      const log = value(openLog(logs[0] ?? ''))
      const person = connectionOf(log)
        .prepare<[], string>('SELECT person FROM person')
        .pluck()
        .get()
      value(
        transact(log, { now: Date.UTC(2026, 10, 16), by: null }, (tx) =>
          granted(tx.append([draft('duty.changed', { person: person as never, duty: 'break' })])),
        ),
      )
      expect(value(await publishLog(log, server.address)).added).toBe(1)
      const { rows } = await client.query('SELECT duty FROM person WHERE person = $1', [person])
      expect(rows).toEqual([{ duty: 'break' }])
      log.close()
      const tables = await client.query(
        "SELECT table_name FROM information_schema.tables WHERE table_schema = 'public'",
      )
      const names = tables.rows.map((row: { table_name: string }) => row.table_name)
      for (const kept of ['contact', 'pin', 'seal_key', 'unproved'])
        expect(names).not.toContain(kept)
    }, 60_000)

    test('a user who may not come in is told so', async () => {
      const read = value(readLog(logs[0] ?? ''))
      const stranger = server.address.replace('office@', 'stranger@')
      expect(refusal(await publishLog(read, stranger))).toBe('server-refused')
      read.close()
    })
  },
)
