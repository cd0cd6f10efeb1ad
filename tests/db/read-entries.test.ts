import { expect, test } from 'vitest'
import { connectionOf, type WritableLog } from '../../db/connection.ts'
import { canonicalJson } from '../../db/canonical-json.ts'
import {
  countEntries,
  desksOf,
  entriesInOrder,
  entriesOfDesk,
  entriesOfKind,
  hasEntry,
  headOf,
  latestStamp,
} from '../../db/log/read-entries.ts'
import { draft, type Entry } from '../../shared-types/entry.ts'
import { desk, lead, morning, otherDesk, tempLog, work } from './temp-log.ts'

const signedIn = draft('person.signed-in', { person: lead })
const pinSet = draft('pin.set', { person: lead })

/** Entries of another desk, in one log with ours. */
function takeIn(log: WritableLog, entries: readonly Entry[]): void {
  const insert = connectionOf(log).prepare(
    'INSERT INTO entry VALUES (@desk, @seq, @ms, @n, @wall, @by, @kind, @v, @body, @prev, @hash)',
  )
  for (const { at, body, ...rest } of entries)
    insert.run({ ...rest, ...at, body: canonicalJson(body) })
}

function twoDesksInOneLog() {
  const log = tempLog()
  const ours = work(log, [signedIn, pinSet, signedIn])
  // Half a second later each, so that the two desks take turns.
  const theirs = work(tempLog(otherDesk), [pinSet, signedIn], morning + 500)
  takeIn(log, theirs)
  return { log, ours, theirs }
}

test('entries of two desks come in the order of the clock', () => {
  const { log, ours, theirs } = twoDesksInOneLog()
  const [a, b, c] = ours
  const [x, y] = theirs
  expect([...entriesInOrder(log)]).toEqual([a, x, b, y, c])
})

test('at one moment the desk decides, then the number', () => {
  const log = tempLog()
  const ours = work(log, [signedIn])
  const theirs = work(tempLog(otherDesk), [signedIn])
  takeIn(log, theirs)
  expect(ours[0]?.at).toEqual(theirs[0]?.at)
  expect([...entriesInOrder(log)]).toEqual([...ours, ...theirs])
})

test('each desk has its own chain and head in a log of many', () => {
  const { log, ours, theirs } = twoDesksInOneLog()
  expect(desksOf(log)).toEqual([desk, otherDesk])
  expect([...entriesOfDesk(log, otherDesk)]).toEqual(theirs)
  expect(headOf(log, desk)).toEqual({ seq: 3, hash: ours[2]?.hash })
  expect(headOf(log, otherDesk)?.seq).toBe(2)
  expect(countEntries(log)).toBe(5)
})

test('entries of one kind come from every desk', () => {
  const { log, ours, theirs } = twoDesksInOneLog()
  expect([...entriesOfKind(log, 'pin.set')]).toEqual([theirs[0], ours[1]])
})

test('what is appended after another desk was heard of comes after all of it', () => {
  const { log, theirs } = twoDesksInOneLog()
  const ahead = theirs.map((entry) => ({
    ...entry,
    seq: entry.seq + 2,
    at: { ms: morning + 9e6, n: 4, wall: morning + 9e6 },
  }))
  takeIn(log, ahead.slice(0, 1))
  const [next] = work(log, [signedIn], morning + 5000)
  expect(next?.at).toEqual({ ms: morning + 9e6, n: 5, wall: morning + 5000 })
  expect(next?.seq).toBe(4)
})

test('a log knows its very entries, and that it holds none yet', () => {
  const { log, ours } = twoDesksInOneLog()
  const [first] = ours as [Entry]
  expect(hasEntry(log, first)).toBe(true)
  expect(hasEntry(log, { ...first, hash: 'f'.repeat(64) })).toBe(false)
  const empty = tempLog()
  expect([headOf(empty, desk), latestStamp(empty)]).toEqual([null, { ms: 0, n: 0 }])
})

test('entries may be appended while others are being read', () => {
  const log = tempLog()
  work(log, [signedIn, signedIn])
  let read = 0
  for (const entry of entriesInOrder(log)) {
    work(log, [pinSet], morning + 60_000 * entry.seq)
    read += 1
  }
  expect([read, countEntries(log)]).toEqual([2, 4])
})
