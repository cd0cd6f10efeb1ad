import { join } from 'node:path'
import { randomBytes } from 'node:crypto'
import { readFileSync, rmSync, writeFileSync } from 'node:fs'
import Database from 'better-sqlite3'
import { beforeAll, expect, test } from 'vitest'
import { type Connection, connectionOf } from '../../db/connection.ts'
import { openLog } from '../../db/log/open.ts'
import { readLog } from '../../db/log/read-log.ts'
import { verifyLog } from '../../db/log/verify.ts'
import { mergeLogs } from '../../db/merge/merge.ts'
import { proofOf } from '../../db/merge/prove.ts'
import { provedRow } from '../../db/merge/row-proof.ts'
import { openSource } from '../../db/merge/source.ts'
import { value } from '../db/temp-log.ts'
import { folderForAll, playedLogs } from './histories.ts'

const folder = folderForAll()
let original: Buffer
let hashes: ReadonlySet<string>

beforeAll(async () => {
  const [path = ''] = await playedLogs(folder, { desks: 1, animals: 12 })
  original = readFileSync(path)
  const log = value(readLog(path))
  const all = connectionOf(log).prepare<[], string>('SELECT hash FROM entry').pluck().all()
  hashes = new Set(all)
  log.close()
}, 120_000)

/** Numbers that look drawn and are the same in every run (Park, Miller, CACM 31(10), 1988). */
function draws(seed: number): (below: number) => number {
  let state = seed
  return (below) => {
    state = (state * 48_271) % 2_147_483_647
    return state % below
  }
}

type Draw = ReturnType<typeof draws>
const pageSize = 4096

/** What befalls a file on a stick. */
const mutations: Readonly<Record<string, (draw: Draw) => Buffer>> = {
  'bit flips': (draw) => {
    const bytes = Buffer.from(original)
    for (let flips = 1 + draw(8); flips > 0; flips -= 1) {
      const at = draw(bytes.length)
      bytes[at] = (bytes[at] ?? 0) ^ (1 << draw(8))
    }
    return bytes
  },
  truncation: (draw) => Buffer.from(original.subarray(0, draw(original.length))),
  'swapped pages': (draw) => {
    const bytes = Buffer.from(original)
    const pages = Math.floor(bytes.length / pageSize)
    const [a, b] = [draw(pages) * pageSize, draw(pages) * pageSize]
    original.copy(bytes, a, b, b + pageSize)
    original.copy(bytes, b, a, a + pageSize)
    return bytes
  },
  'a page of noise': (draw) => {
    const bytes = Buffer.from(original)
    randomBytes(pageSize).copy(bytes, draw(Math.floor(bytes.length / pageSize)) * pageSize)
    return bytes
  },
  'some other SQLite file': (draw) => {
    const other = new Database(':memory:')
    other.exec('CREATE TABLE entry (a, b); CREATE TABLE t (x)')
    other.prepare('INSERT INTO entry VALUES (?, ?)').run(draw(1000), 'x'.repeat(draw(9000)))
    const bytes = other.serialize()
    other.close()
    // Every other one even says that it is a station log.
    if (draw(2) === 0) bytes.writeInt32BE(0x4475736b, 68)
    return bytes
  },
}

interface Outcome {
  readonly said: string
  readonly proved: number
}

/** How many rows are left unproved where they lie; null where each must be looked at by itself. */
function unprovedTogether(connection: Connection): number | null {
  const proving = proofOf(connection)
  for (let step = proving.next(); ; step = proving.next())
    if (step.done === true) return step.value?.unproved.length ?? null
}

/** Opens a mutated file as a merge does and proves its rows; nothing may be proved that was not there. */
function outcomeOf(path: string): Outcome {
  const opened = openSource(path)
  if (!opened.ok) return { said: `refused: ${opened.refusal.code}`, proved: 0 }
  const source = opened.value
  const proved = new Set<string>()
  let others = 0
  try {
    for (const row of source.rows()) {
      const entry = provedRow(row)
      if (entry === null) others += 1
      else proved.add(entry.hash)
    }
    const together = source.sound === null ? null : unprovedTogether(source.sound)
    if (together !== null) expect(together).toBe(others)
  } finally {
    source.close()
  }
  expect([...proved].filter((hash) => !hashes.has(hash))).toEqual([])
  // A file that is called whole has lost nothing without a word.
  if (source.state === 'whole') expect(proved.size + others).toBe(hashes.size)
  const said = source.state === 'whole' && others > 0 ? 'whole, with altered entries' : source.state
  return { said, proved: proved.size }
}

test('10,000 mutated files are each refused or proved in part: no crash, no hang, nothing lost in silence', () => {
  const draw = draws(7)
  const path = join(folder, 'mutant.stationlog')
  const counts = new Map<string, number>()
  const names = Object.keys(mutations)
  for (let count = 0; count < 10_000; count += 1) {
    const name = names[count % names.length] ?? ''
    writeFileSync(path, mutations[name]?.(draw) ?? original)
    const began = performance.now()
    const { said } = outcomeOf(path)
    expect(performance.now() - began, `${name} took too long`).toBeLessThan(5000)
    const key = `${name}: ${said}`
    counts.set(key, (counts.get(key) ?? 0) + 1)
  }
  rmSync(path)
  console.info(
    [...counts]
      .map(([key, count]) => `${count} x ${key}`)
      .toSorted()
      .join('\n'),
  )
  const all = [...counts.values()].reduce((sum, count) => sum + count, 0)
  expect(all).toBe(10_000)
}, 600_000)

test('a hundred of them are merged into one log, which is sound and holds what they prove', () => {
  const draw = draws(11)
  const files = Array.from({ length: 100 }, (_, at) => {
    const path = join(folder, `mutant-${at}.stationlog`)
    const names = Object.keys(mutations)
    writeFileSync(path, mutations[names[at % names.length] ?? '']?.(draw) ?? original)
    return path
  })
  const out = join(folder, 'merged')
  const report = value(mergeLogs({ out, files, office: null }))
  expect(report.files.length).toBe(100)
  const log = value(openLog(out))
  const { readTables, findings } = verifyLog(log)
  expect(readTables).toBe('equal')
  expect(findings.filter(({ what }) => what === 'altered')).toEqual([])
  log.close()
}, 120_000)
