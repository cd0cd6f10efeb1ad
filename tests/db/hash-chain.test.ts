import { createHash } from 'node:crypto'
import { expect, test } from 'vitest'
import { chainStart, checkLink, sealEntry, type UnsealedEntry } from '../../db/log/hash-chain.ts'
import { desk, lead } from './temp-log.ts'

const first: UnsealedEntry = {
  desk,
  seq: 1,
  at: { ms: 1_794_663_000_000, n: 0, wall: 1_794_663_000_000 },
  by: lead,
  kind: 'person.signed-in',
  v: 1,
  body: { person: lead },
}
const second: UnsealedEntry = {
  ...first,
  seq: 2,
  at: { ms: 1_794_663_000_000, n: 1, wall: 1_794_662_000_000 },
}

test('the hash is that of the hash before and the canonical text, as anyone can work it out', () => {
  const text =
    '{"at":{"ms":1794663000000,"n":0,"wall":1794663000000},"body":{"person":"26KRVA0001PE"},"by":"26KRVA0001PE",' +
    '"desk":"26KRVA","kind":"person.signed-in","seq":1,"v":1}'
  const expected = createHash('sha256').update(chainStart).update(text).digest('hex')
  expect(sealEntry(first, chainStart).hash).toBe(expected)
})

test('the first entry follows sixty-four zeros', () => {
  expect(checkLink(sealEntry(first, chainStart), null)).toBe('whole')
})

test('an entry follows the one it was sealed to and no other', () => {
  const before = sealEntry(first, chainStart)
  const other = sealEntry({ ...first, by: null }, chainStart)
  const next = sealEntry(second, before.hash)
  expect(checkLink(next, before)).toBe('whole')
  expect(checkLink(next, other)).toBe('broken-link')
})

test.each([
  ['person', { by: null }],
  ['number', { seq: 3 }],
  ['clock', { at: { ms: 1_794_663_000_000, n: 1, wall: 1_794_662_000_001 } }],
  ['time', { at: { ms: 1_794_663_000_000, n: 2, wall: 1_794_662_000_000 } }],
  ['kind', { kind: 'pin.set' }],
  ['version', { v: 2 }],
  ['body', { body: {} }],
  ['hash before', { prev: 'f'.repeat(64) }],
])('another %s is an altered entry', (_, change) => {
  const before = sealEntry(first, chainStart)
  const altered = { ...sealEntry(second, before.hash), ...change }
  expect(checkLink(altered, before)).toBe('altered')
})
