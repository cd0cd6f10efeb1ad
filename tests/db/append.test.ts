import { describe, expect, test } from 'vitest'
import { connectForWriting, connectionOf, type ReadableLog } from '../../db/connection.ts'
import { transact } from '../../db/log/append.ts'
import { chainStart, checkLink } from '../../db/log/hash-chain.ts'
import { openLog } from '../../db/log/open.ts'
import { countEntries, entriesInOrder, headOf } from '../../db/log/read-entries.ts'
import { verifyLog } from '../../db/log/verify.ts'
import { draft, type EntryDraft } from '../../shared-types/entry.ts'
import { granted, refused } from '../../shared-types/result.ts'
import { closing, desk, lead, morning, refusal, tempLog, value, work } from './temp-log.ts'

const signedIn = draft('person.signed-in', { person: lead })
const added = draft('person.added', { person: lead, name: 'Ada Moss', role: 'lead', training: [] })
const at = (now: number) => ({ now, by: lead })

const people = (log: ReadableLog) =>
  connectionOf(log).prepare('SELECT person FROM person').pluck().all()

describe('what is appended', () => {
  test('is numbered from one, chained, and signed by the person at the desk', () => {
    const log = tempLog()
    const entries = work(log, [signedIn, signedIn, signedIn])
    expect(entries.map(({ seq }) => seq)).toEqual([1, 2, 3])
    expect(entries.map(({ by }) => by)).toEqual([lead, lead, lead])
    expect(entries[0]?.prev).toBe(chainStart)
    expect(checkLink(entries[2] as never, entries[1] as never)).toBe('whole')
    expect([...entriesInOrder(log)]).toEqual(entries)
  })

  test('in one action carries one time and keeps its order', () => {
    const log = tempLog()
    const entries = value(
      transact(log, at(morning), (tx) => granted(tx.append([signedIn, signedIn]))),
    )
    expect(entries.map((entry) => entry.at)).toEqual([
      { ms: morning, n: 0, wall: morning },
      { ms: morning, n: 1, wall: morning },
    ])
  })

  test('can be read within the action, entry and table alike', () => {
    const log = tempLog()
    const seen = transact(log, at(morning), (tx) => {
      tx.append([added])
      return granted([headOf(tx, desk)?.seq, people(tx)])
    })
    expect(value(seen)).toEqual([1, [lead]])
  })

  test('never has a body that its own schema refuses: that is a bug, and nothing is written', () => {
    const log = tempLog()
    const broken = { ...added, body: { ...added.body, name: '' } } as EntryDraft
    const act = () => transact(log, at(morning), (tx) => granted(tx.append([signedIn, broken])))
    expect(act).toThrow('person.added does not fit its own schema')
    expect(countEntries(log)).toBe(0)
    expect(people(log)).toEqual([])
  })

  test('is kept even when its kind is of a later version', () => {
    const log = tempLog()
    const later = { kind: 'drone.landed', v: 3, body: { rotor: 4 } } as unknown as EntryDraft
    work(log, [later, signedIn])
    expect([...entriesInOrder(log)].map(({ kind }) => kind)).toEqual([
      'drone.landed',
      'person.signed-in',
    ])
  })
})

describe('nothing is written', () => {
  test('when the action is refused half way', () => {
    const log = tempLog()
    const result = transact(log, at(morning), (tx) => {
      tx.append([added])
      return refused('not-now', 'Not now.', 'Later.')
    })
    expect(refusal(result)).toBe('not-now')
    expect([countEntries(log), people(log)]).toEqual([0, []])
  })

  test('when the program has a bug half way, and the bug is not hidden', () => {
    const log = tempLog()
    const act = () =>
      transact(log, at(morning), (tx) => {
        tx.append([added])
        throw new RangeError('a bug')
      })
    expect(act).toThrow(RangeError)
    expect([countEntries(log), people(log)]).toEqual([0, []])
    work(log, [signedIn])
  })

  test('when a body holds what JSON cannot', () => {
    const log = tempLog()
    const reading = { cooler: 'x', celsius: Number.NaN, excursion: true }
    const act = () => work(log, [draft('cooler.read', reading as never)])
    expect(act).toThrow(TypeError)
    expect(countEntries(log)).toBe(0)
  })

  test('when the disk is full, and the day goes on once there is room', () => {
    const log = tempLog()
    const connection = connectionOf(log)
    const pages = connection.pragma('page_count', { simple: true }) as number
    connection.pragma(`max_page_count = ${pages}`)
    const reason = 'x'.repeat(200)
    const one = draft('day.reopened', { date: '2026-11-14', reason } as never)
    const long = [added, ...Array.from({ length: 100 }, () => one)]
    const result = transact(log, at(morning), (tx) => granted(tx.append(long)))
    expect(refusal(result)).toBe('disk-full')
    expect([countEntries(log), people(log)]).toEqual([0, []])
    connection.pragma('max_page_count = 100000')
    expect(work(log, long)).toHaveLength(101)
  })

  test('when the log cannot be written', () => {
    const log = tempLog()
    connectionOf(log).pragma('query_only = ON')
    const result = transact(log, at(morning), (tx) => granted(tx.append([signedIn])))
    expect(refusal(result)).toBe('medium-read-only')
  })

  test('when another program is writing in the log', () => {
    const log = tempLog()
    connectionOf(log).pragma('busy_timeout = 20')
    const other = connectForWriting(log.path)
    other.exec('BEGIN IMMEDIATE')
    expect(refusal(transact(log, at(morning), () => granted(1)))).toBe('log-in-use')
    other.close()
    expect(value(transact(log, at(morning), () => granted(1)))).toBe(1)
  })
})

describe('an action', () => {
  test('is not begun within another, and the outer one is not written either', () => {
    const log = tempLog()
    const nested = () =>
      transact(log, at(morning), (tx) => {
        tx.append([added])
        return transact(log, at(morning), () => granted(1))
      })
    expect(nested).toThrow('within an action')
    expect(countEntries(log)).toBe(0)
  })

  test('appends nothing once it is over', () => {
    const log = tempLog()
    const tx = value(transact(log, at(morning), (during) => granted(during)))
    expect(() => tx.append([added])).toThrow('over')
    expect(countEntries(log)).toBe(0)
  })
})

test('two programs on one log take turns and make one chain', () => {
  const log = tempLog()
  const other = closing(value(openLog(log.path)))
  const entries = [log, other, log, other].flatMap((each) => work(each, [signedIn]))
  expect(entries.map(({ seq }) => seq)).toEqual([1, 2, 3, 4])
  expect(verifyLog(log).findings).toEqual([])
})

describe('a clock that was set back', () => {
  const day = 24 * 60 * 60 * 1000

  test('by a day is refused before anything is done, with both times', () => {
    const log = tempLog()
    work(log, [signedIn])
    const result = transact(log, at(morning - day), () => {
      throw new Error('must not be asked')
    })
    expect(result).toMatchObject({
      ok: false,
      refusal: {
        code: 'clock-set-back',
        say: 'The clock of this computer reads 2026-11-13 13:30 UTC, but the last entry was made at 2026-11-14 13:30 UTC.',
      },
    })
    expect(countEntries(log)).toBe(1)
  })

  test('by some minutes is what laptops do, and entries still come one after another', () => {
    const log = tempLog()
    work(log, [signedIn])
    const [entry] = work(log, [signedIn], morning - 9 * 60_000)
    expect(entry?.at).toEqual({ ms: morning, n: 1, wall: morning - 9 * 60_000 })
  })

  test('a few minutes at a time is refused once it adds up', () => {
    const log = tempLog()
    work(log, [signedIn])
    work(log, [signedIn], morning - 9 * 60_000)
    const result = transact(log, at(morning - 18 * 60_000), () => granted(1))
    expect(refusal(result)).toBe('clock-set-back')
  })

  test('is used from then on once the lead accepts it', () => {
    const log = tempLog()
    work(log, [signedIn])
    const accepted = draft('clock.accepted', { wallMs: morning - day, lastMs: morning })
    const accepting = { ...at(morning - day), acceptClock: true }
    value(transact(log, accepting, (tx) => granted(tx.append([accepted]))))
    const [next] = work(log, [signedIn], morning - day + 60_000)
    expect(next?.at).toEqual({ ms: morning, n: 2, wall: morning - day + 60_000 })
  })
})
