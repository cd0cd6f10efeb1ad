import { existsSync, readFileSync, readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { describe, expect, test } from 'vitest'
import { connectionOf } from '../../db/connection.ts'
import { createLog } from '../../db/log/create.ts'
import { openLog } from '../../db/log/open.ts'
import { countEntries, entriesInOrder } from '../../db/log/read-entries.ts'
import { readLog } from '../../db/log/read-log.ts'
import { latestFormat } from '../../db/migrations/list.ts'
import { draft } from '../../shared-types/entry.ts'
import { closing, desk, lead, refusal, tempFolder, tempLog, value, work } from './temp-log.ts'

const signedIn = draft('person.signed-in', { person: lead })

describe('beginning a log', () => {
  test('never writes over a file', () => {
    const path = join(tempFolder(), 'notes.stationlog')
    writeFileSync(path, 'shopping list')
    expect(refusal(createLog(path, desk))).toBe('file-exists')
    expect(readFileSync(path, 'utf8')).toBe('shopping list')
  })

  test('is refused where there is no folder', () => {
    expect(refusal(createLog(join(tempFolder(), 'gone', 'a.stationlog'), desk))).toBe('not-found')
  })

  test('makes a file that says in its header what it is', () => {
    const log = tempLog()
    log.close()
    // SQLite file format 1.3: application id at byte 68, user version at byte 60, big-endian.
    const header = readFileSync(log.path)
    expect(header.toString('ascii', 68, 72)).toBe('Dusk')
    expect(header.readInt32BE(60)).toBe(latestFormat)
  })
})

describe('every writing connection', () => {
  test('waits for the disk at each commit, also after it has written', () => {
    const log = tempLog()
    work(log, [signedIn])
    const pragma = (name: string) => connectionOf(log).pragma(name, { simple: true })
    expect(pragma('journal_mode')).toBe('wal')
    // 2 is FULL: sqlite.org/pragma.html#pragma_synchronous
    expect(pragma('synchronous')).toBe(2)
    expect(pragma('trusted_schema')).toBe(0)
    expect(pragma('foreign_keys')).toBe(1)
    log.close()
    const again = closing(value(openLog(log.path)))
    expect(connectionOf(again).pragma('synchronous', { simple: true })).toBe(2)
  })

  test('refuses to change an entry or to take one out', () => {
    const log = tempLog()
    work(log, [signedIn])
    const run = (sql: string) => () => connectionOf(log).exec(sql)
    expect(run('UPDATE entry SET v = 2')).toThrow('an entry is never changed')
    expect(run('DELETE FROM entry')).toThrow('an entry is never taken out')
    expect(run('INSERT OR REPLACE INTO entry SELECT * FROM entry')).toThrow('never taken out')
  })
})

describe('a file that is no sound station log', () => {
  const foreign: readonly (readonly [what: string, make: (path: string) => void])[] = [
    ['a picture', (path) => writeFileSync(path, Buffer.from('89504e470d0a1a0a', 'hex'))],
    ['an empty file', (path) => writeFileSync(path, '')],
    [
      'a database of another program',
      (path) => new Database(path).exec('CREATE TABLE t (a)').close(),
    ],
  ]

  test.each(foreign)('%s is not a station log', (_, make) => {
    const path = join(tempFolder(), 'a.stationlog')
    make(path)
    const before = readFileSync(path)
    expect(refusal(openLog(path))).toBe('not-a-station-log')
    expect(refusal(readLog(path))).toBe('not-a-station-log')
    expect(readFileSync(path).equals(before)).toBe(true)
  })

  test('a folder is not a station log, and no file is no file', () => {
    const folder = tempFolder()
    expect(refusal(openLog(folder))).toBe('not-a-station-log')
    expect(refusal(openLog(join(folder, 'a.stationlog')))).toBe('not-found')
    expect(refusal(readLog(join(folder, 'a.stationlog')))).toBe('not-found')
  })

  test.each([20, 99, 100, 4095, 4096, 9000, 40_000])(
    'a log torn off after %i bytes is torn, and stays as it is',
    (length) => {
      const log = tempLog()
      work(
        log,
        Array.from({ length: 60 }, () => signedIn),
      )
      log.close()
      const path = join(tempFolder(), 'torn.stationlog')
      const torn = readFileSync(log.path).subarray(0, length)
      writeFileSync(path, torn)
      expect(refusal(readLog(path))).toBe('torn')
      expect(refusal(openLog(path))).toBe('torn')
      expect(refusal(readLog(path))).toBe('torn')
      expect(readFileSync(path).equals(torn)).toBe(true)
      expect(readdirSync(join(path, '..'))).toEqual(['torn.stationlog'])
    },
  )

  test('a log with a page overwritten is torn', () => {
    const log = tempLog()
    work(
      log,
      Array.from({ length: 60 }, () => signedIn),
    )
    log.close()
    const bytes = readFileSync(log.path)
    const root = rootOf(log.path, 'entry') - 1
    bytes.fill(0x5a, root * 4096, root * 4096 + 64)
    writeFileSync(log.path, bytes)
    expect(refusal(openLog(log.path))).toBe('torn')
    expect(refusal(readLog(log.path))).toBe('torn')
  })
})

function rootOf(path: string, table: string): number {
  const database = new Database(path, { readonly: true })
  const query = database.prepare<[string], number>(
    'SELECT rootpage FROM sqlite_schema WHERE name = ?',
  )
  const page = query.pluck().get(table) ?? 0
  database.close()
  return page
}

describe('a log of a newer version', () => {
  function newerLog(): string {
    const log = tempLog()
    work(log, [signedIn, draft('pin.set', { person: lead })])
    connectionOf(log).exec('CREATE TABLE sonar (ping TEXT)')
    connectionOf(log).pragma(`user_version = ${latestFormat + 10}`)
    log.close()
    return log.path
  }

  test('is not written in', () => {
    const path = newerLog()
    const before = readFileSync(path)
    expect(refusal(openLog(path))).toBe('newer-version')
    expect(readFileSync(path).equals(before)).toBe(true)
  })

  test('can be read, and says that it is newer', () => {
    const log = closing(value(readLog(newerLog())))
    expect(log.format).toBe(latestFormat + 10)
    expect(countEntries(log)).toBe(2)
  })
})

describe('reading a log', () => {
  const three = [signedIn, signedIn, signedIn]

  test('leaves the file and its folder as they were', () => {
    const log = tempLog()
    work(log, three)
    log.close()
    const before = readFileSync(log.path)
    const read = closing(value(readLog(log.path)))
    expect([...entriesInOrder(read)]).toHaveLength(3)
    expect(readFileSync(log.path).equals(before)).toBe(true)
    expect(readdirSync(join(log.path, '..'))).toEqual(['26KRVA.stationlog'])
  })

  test('shows what a desk that is open right now has written', () => {
    const log = tempLog()
    work(log, three)
    expect(countEntries(closing(value(readLog(log.path))))).toBe(3)
    work(log, [signedIn])
    expect(countEntries(closing(value(readLog(log.path))))).toBe(4)
  })

  test('finds the last entries in the WAL file that was copied along', () => {
    const log = tempLog()
    work(log, three)
    const path = join(tempFolder(), 'copied.stationlog')
    for (const part of ['', '-wal']) writeFileSync(path + part, readFileSync(log.path + part))
    expect(countEntries(closing(value(readLog(path))))).toBe(3)
    expect(existsSync(`${path}-shm`)).toBe(false)
  })

  test('cannot write', () => {
    const log = tempLog()
    const read = closing(value(readLog(log.path)))
    expect(() => connectionOf(read).exec('DELETE FROM own_desk')).toThrow('readonly')
  })
})
