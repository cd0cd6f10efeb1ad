import fc from 'fast-check'
import { expect, test } from 'vitest'
import { verifyLog } from '../../db/log/verify.ts'
import { folderForFile, hashesOf, play, reading } from './played.ts'

const folder = folderForFile()

const hashes = async (seed: number) => {
  const desks = await play(folder, { seed, animals: 24, desks: 2 })
  return desks.map(({ log }) => hashesOf(log))
}

test('the same seed leaves the same entries, hash for hash', async () => {
  const [first, second] = [await hashes(7), await hashes(7)]
  expect(first).toEqual(second)
  expect(first[0]?.length).toBeGreaterThan(100)
  expect(first[0]).not.toEqual(first[1])
}, 60_000)

test('another seed leaves another day', async () => {
  const [first] = await hashes(7)
  const [other] = await hashes(8)
  expect(first?.at(-1)).not.toBe(other?.at(-1))
}, 60_000)

test('a day of any size and seed can be played to its handoff, and is whole', async () => {
  const wish = fc.record({
    seed: fc.nat(),
    animals: fc.integer({ min: 1, max: 30 }),
    desks: fc.integer({ min: 1, max: 3 }),
  })
  await fc.assert(
    fc.asyncProperty(wish, async (given) => {
      for (const { log } of await play(folder, given))
        expect(reading(log, (open) => verifyLog(open)).whole).toBe(true)
    }),
    { numRuns: 12, seed: 20261114 },
  )
}, 120_000)
