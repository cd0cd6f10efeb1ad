import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { canonicalJson } from '../../db/canonical-json.ts'
import { type Connection, connectInMemory, connectionOf, ReadableLog } from '../../db/connection.ts'
import type { FindingKind } from '../../db/log/finding.ts'
import { chainStart, sealEntry } from '../../db/log/hash-chain.ts'
import { entriesInOrder } from '../../db/log/read-entries.ts'
import { verifyLog } from '../../db/log/verify.ts'
import { latestFormat } from '../../db/migrations/list.ts'
import { type Entry, type EntryDraft } from '../../shared-types/entry.ts'
import { DeskId } from '../../shared-types/sample-number.ts'
import { allKinds, draftOf, drafts } from './some-drafts.ts'
import { desk, tempLog, work } from './temp-log.ts'

/** One fact of every kind, always the same ones. */
const oneOfEach: EntryDraft[] = allKinds.flatMap((kind) =>
  fc.sample(draftOf(kind), { numRuns: 1, seed: 26 }),
)

test('a log of every kind of entry is whole', () => {
  const log = tempLog()
  work(log, oneOfEach)
  expect(verifyLog(log)).toEqual({
    whole: true,
    entries: allKinds.length,
    desks: [
      { desk, entries: allKinds.length, head: expect.objectContaining({ seq: allKinds.length }) },
    ],
    notUnderstood: 0,
    readTables: 'equal',
    findings: [],
  })
})

test('whatever facts are appended, the log is whole and a rebuild would make the very same tables', () => {
  fc.assert(
    fc.property(drafts, (facts) => {
      const log = tempLog()
      work(log, facts)
      expect(verifyLog(log).findings).toEqual([])
      log.close()
    }),
    { numRuns: 40 },
  )
})

test('an entry of a later version is counted, and the log is whole', () => {
  const log = tempLog()
  work(log, [...oneOfEach, { kind: 'drone.landed', v: 1, body: {} } as unknown as EntryDraft])
  expect(verifyLog(log)).toMatchObject({ whole: true, notUnderstood: 1 })
})

test('how far it has come is told to the end', () => {
  const log = tempLog()
  work(log, oneOfEach)
  const told: number[] = []
  verifyLog(log, (done, total) => told.push(done / total))
  expect(told).toHaveLength(2 * allKinds.length)
  expect(told.at(-1)).toBe(1)
})

/** A sound log, as bytes, so that each test can spoil its own copy. */
interface Sound {
  readonly image: Buffer
  readonly entries: readonly Entry[]
}

const madeOnce = new Map<readonly EntryDraft[], Sound>()

function soundLog(facts: readonly EntryDraft[]): Sound {
  const made = madeOnce.get(facts) ?? newSoundLog(facts)
  madeOnce.set(facts, made)
  return made
}

function newSoundLog(facts: readonly EntryDraft[]): Sound {
  const log = tempLog()
  work(log, facts)
  const image = connectionOf(log).serialize()
  // Bytes 18 and 19 ask for a WAL file, which an image in memory cannot have.
  image[18] = image[19] = 1
  return { image, entries: [...entriesInOrder(log)] }
}

const entry = (seq: number) => soundLog(oneOfEach).entries.at(seq - 1) as Entry

/** What is found in a log after somebody changed it past this program, guards put back in place. */
function foundAfter(spoil: (connection: Connection) => void, facts = oneOfEach): FindingKind[] {
  const connection = connectInMemory(Buffer.from(soundLog(facts).image))
  connection.pragma('ignore_check_constraints = ON')
  const guards = connection
    .prepare<[], { name: string; sql: string }>(
      "SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'",
    )
    .all()
  for (const { name } of guards) connection.exec(`DROP TRIGGER ${name}`)
  spoil(connection)
  for (const { sql } of guards) connection.exec(sql)
  const report = verifyLog(new ReadableLog(connection, 'spoilt', desk, latestFormat))
  connection.close()
  expect(report.whole).toBe(report.findings.every(({ what }) => what === 'fork'))
  return report.findings.map(({ what }) => what)
}

describe('is found', () => {
  const texts = ['desk', 'by', 'kind', 'body', 'prev', 'hash'] as const
  const numbers = ['seq', 'ms', 'n', 'v'] as const

  test('any byte of any entry that was altered', () => {
    const place = fc.record({
      row: fc.nat(allKinds.length - 1),
      column: fc.constantFrom(...texts),
      at: fc.nat(),
      bits: fc.integer({ min: 1, max: 255 }),
    })
    fc.assert(
      fc.property(place, ({ row, column, at, bits }) => {
        const found = foundAfter((connection) => {
          const bytes = connection
            .prepare<[number], Buffer>(
              `SELECT CAST("${column}" AS BLOB) FROM entry WHERE rowid = ?`,
            )
            .pluck()
            .get(row + 1) as Buffer
          bytes[at % bytes.length] = (bytes[at % bytes.length] as number) ^ bits
          connection
            .prepare(`UPDATE entry SET "${column}" = CAST(? AS TEXT) WHERE rowid = ?`)
            .run(bytes, row + 1)
        })
        expect(found).toContain('altered')
      }),
      { numRuns: 300 },
    )
  })

  test('any number of any entry that was altered', () => {
    const place = fc.record({
      row: fc.nat(allKinds.length - 1),
      column: fc.constantFrom(...numbers),
      bit: fc.nat(30),
    })
    fc.assert(
      fc.property(place, ({ row, column, bit }) => {
        const found = foundAfter((connection) => {
          const number = `"${column}" + (1 << ${bit}) * (1 - 2 * ("${column}" >> ${bit} & 1))`
          connection.exec(`UPDATE entry SET "${column}" = ${number} WHERE rowid = ${row + 1}`)
        })
        expect(found).toContain('altered')
      }),
      { numRuns: 100 },
    )
  })

  test('a byte altered into one that reads the same when read leniently', () => {
    // U+FFFD and a torn sequence of three bytes look alike to a lenient reader of UTF-8.
    const facts = [
      { kind: 'drone.landed', v: 1, body: { words: '\ufffd' } },
    ] as unknown as EntryDraft[]
    const torn = "CAST(unhex(replace(hex(body), 'EFBFBD', 'F0BFBD')) AS TEXT)"
    const found = foundAfter(
      (connection) => connection.exec(`UPDATE entry SET body = ${torn}`),
      facts,
    )
    expect(found).toEqual(['altered'])
  })

  test('a body written another way, though it means the same', () => {
    const spaced = (connection: Connection) =>
      connection.exec("UPDATE entry SET body = replace(body, '{', '{ ') WHERE rowid = 5")
    expect(foundAfter(spaced)).toEqual(['altered'])
  })

  test('an entry that was taken out', () => {
    const takenOut = (connection: Connection) => connection.exec('DELETE FROM entry WHERE seq = 7')
    expect(foundAfter(takenOut)).toContain('gap')
  })

  test('an entry that was taken out and the others moved up', () => {
    const movedUp = (connection: Connection) =>
      connection.exec(
        'DELETE FROM entry WHERE seq = 7; UPDATE entry SET seq = seq - 1 WHERE seq > 7',
      )
    expect(foundAfter(movedUp)).toContain('broken-link')
  })

  test('entries taken off the end, by what the screens still show', () => {
    const offTheEnd = (connection: Connection) =>
      connection.exec('DELETE FROM entry WHERE seq > 20')
    expect(foundAfter(offTheEnd)).toEqual(['read-tables-differ'])
  })

  test('an entry sealed anew after it was altered, by the one that follows it', () => {
    const old = entry(7)
    const { prev, hash: _, ...rest } = old
    const forged = sealEntry({ ...rest, body: { forged: true } }, prev)
    const replaced = (connection: Connection) =>
      connection
        .prepare('UPDATE entry SET body = ?, hash = ? WHERE seq = 7')
        .run('{"forged":true}', forged.hash)
    expect(foundAfter((connection) => void replaced(connection))).toContain('broken-link')
  })

  test('an entry with an earlier time than the one before it', () => {
    const last = entry(0)
    const { hash: _, ...rest } = last
    const early = sealEntry({ ...rest, seq: last.seq + 1, at: { ms: 5, n: 0, wall: 5 } }, last.hash)
    expect(foundAfter((connection) => insert(connection, early))).toContain('clock-order')
  })

  test('a fork, which is no damage: both branches are whole', () => {
    const last = entry(0)
    const { prev, hash: _, ...rest } = last
    const branch = sealEntry({ ...rest, kind: 'drone.landed' }, prev)
    const next = sealEntry(
      { ...rest, seq: rest.seq + 1, at: { ...rest.at, n: 9 }, kind: 'drone.landed' },
      branch.hash,
    )
    const found = foundAfter((connection) => [branch, next].forEach((e) => insert(connection, e)))
    expect(found).toEqual(['fork'])
  })

  test('a chain of another desk that lacks its beginning', () => {
    const { prev, hash: _, ...rest } = entry(4)
    const stray = sealEntry({ ...rest, desk: DeskId.parse('26KRVC') }, prev)
    expect(foundAfter((connection) => insert(connection, stray))).toContain('gap')
  })

  test('a first entry that follows something', () => {
    const { hash: _, ...rest } = entry(1)
    const stray = sealEntry({ ...rest, desk: DeskId.parse('26KRVC') }, 'f'.repeat(64))
    expect(chainStart).not.toBe(stray.prev)
    expect(foundAfter((connection) => insert(connection, stray))).toContain('broken-link')
  })

  test('a row of a read table that says otherwise than the entries', () => {
    const lied = (connection: Connection) => connection.exec("UPDATE animal SET tag = '1'")
    expect(foundAfter(lied)).toEqual(['read-tables-differ'])
  })

  test('a row too many or too few in a read table', () => {
    const fewer = (connection: Connection) => connection.exec('DELETE FROM cooler')
    expect(foundAfter(fewer)).toEqual(['read-tables-differ'])
    const more = (connection: Connection) =>
      connection.exec("INSERT INTO label_run (hash, blanks, by_hand, ms) VALUES ('x', 1, 0, 1)")
    expect(foundAfter(more)).toEqual(['read-tables-differ'])
  })

  test('a guard that was taken away, and a table that was added', () => {
    const unguarded = (connection: Connection) => connection.exec('DROP INDEX entry_in_order')
    expect(foundAfter(unguarded)).toEqual(['tables-changed'])
    const added = (connection: Connection) => connection.exec('CREATE TABLE extra (a)')
    expect(foundAfter(added)).toContain('tables-changed')
  })
})

function insert(connection: Connection, { at, body, ...rest }: Entry): void {
  connection
    .prepare(
      'INSERT INTO entry VALUES (@desk, @seq, @ms, @n, @wall, @by, @kind, @v, @body, @prev, @hash)',
    )
    .run({ ...rest, ...at, body: canonicalJson(body) })
}
