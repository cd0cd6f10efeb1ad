import fc from 'fast-check'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openLog } from '../../db/log/open.ts'
import { verifyLog } from '../../db/log/verify.ts'
import { day } from './deeds.ts'
import { Floor, type Start, stationToStartFrom } from './floor.ts'

let start: Start
beforeAll(async () => {
  start = await stationToStartFrom()
})
afterAll(() => start.end())

/** Kits by account, summed from the lines of the ledger. */
function accounts(floor: Floor): Map<string, number> {
  const sums = new Map<string, number>()
  for (const { account, delta } of floor.table('kit_line'))
    sums.set(String(account), (sums.get(String(account)) ?? 0) + Number(delta))
  return sums
}

function checkLedger(floor: Floor): void {
  const sums = accounts(floor)
  expect([...sums.values()].reduce((sum, count) => sum + count, 0)).toBe(0)
  for (const [account, count] of sums)
    if (account !== 'delivered') expect(count, account).toBeGreaterThanOrEqual(0)
  const opened = floor.table('kit').filter(({ state }) => state === 'opened')
  expect((sums.get('used') ?? 0) + (sums.get('sent') ?? 0)).toBe(opened.length)
}

function checkBags(floor: Floor): void {
  const found = new Map(
    floor
      .table('bag')
      .map(({ bag, place, cooler }) => [
        bag,
        place === 'cooler' ? cooler : place === 'handed-off' ? 'handed off' : place,
      ]),
  )
  expect(found).toEqual(floor.bagsAt)
  const ofKit = new Map(floor.table('kit').map(({ kit, animal }) => [kit, animal]))
  for (const { animal, kit } of floor.table('bag')) expect(ofKit.get(kit)).toBe(animal)
}

function checkCoolers(floor: Floor): void {
  const bags = floor.table('bag')
  const sealedWith = new Map<unknown, number>()
  for (const { kind, body } of floor.table('entry'))
    if (kind === 'cooler.sealed') {
      const sealed = JSON.parse(String(body)) as { cooler: string; bags: number }
      sealedWith.set(sealed.cooler, sealed.bags)
    }
  for (const { cooler, state, capacity } of floor.table('cooler')) {
    const inside = bags.filter((bag) => bag.cooler === cooler).length
    expect(inside).toBeLessThanOrEqual(Number(capacity))
    if (state !== 'open') expect(inside).toBe(sealedWith.get(cooler))
  }
}

function checkLabels(floor: Floor): void {
  const live = floor.table('label').filter((label) => label.void_reason === null)
  expect(new Set(live.map(({ number }) => number)).size).toBe(live.length)
  const sealed = floor.table('bag').filter(({ place }) => place !== 'discarded')
  const numbers = new Set(live.map(({ number }) => number))
  for (const { bag } of sealed) expect(numbers).toContain(bag)
}

function checkTags(floor: Floor): void {
  const tags = floor.table('animal').map(({ tag }) => tag)
  expect(new Set(tags).size).toBe(tags.length)
}

function checkWhole(floor: Floor): void {
  const log = openLog(floor.path)
  if (!log.ok) throw new Error(log.refusal.say)
  const report = verifyLog(log.value)
  log.value.close()
  expect(report).toMatchObject({ whole: true, readTables: 'equal', notUnderstood: 0, findings: [] })
}

/** What the desk was brought to do, over all runs: a test of anything must have done something. */
const done = new Map<string, number>()

test('on any day, whatever is tried in whatever order, nothing is lost, doubled or made up', async () => {
  await fc.assert(
    fc.asyncProperty(day, async (deeds) => {
      const floor = new Floor(start)
      try {
        await floor.open()
        for (const { deed, a, b, c } of deeds) {
          await deed(floor, a, b, c)
          checkLedger(floor)
        }
        checkBags(floor)
        checkCoolers(floor)
        checkLabels(floor)
        checkTags(floor)
        for (const { kind } of floor.table('entry'))
          done.set(String(kind), (done.get(String(kind)) ?? 0) + 1)
        await floor.shut()
        checkWhole(floor)
      } finally {
        await floor.end()
      }
    }),
    { seed: 20261114, numRuns: 8, endOnFailure: true },
  )
}, 120_000)

test('and those days had everything in them, from check-in to courier', () => {
  for (const kind of [
    'animal.finished',
    'animal.left',
    'bag.discarded',
    'bag.taken-out',
    'seal.broken',
    'label.voided',
    'kit.spoiled',
    'day.closed',
    'day.reopened',
    'handoff.signed',
  ])
    expect(done.get(kind) ?? 0, kind).toBeGreaterThan(0)
})
