/** The three ledgers over days of any deeds: nothing is made, nothing is lost, every balance is its entries. */
import fc from 'fast-check'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { ReadableLog } from '../../db/connection.ts'
import { readLog } from '../../db/log/read-log.ts'
import { allBags, bagsOnBench } from '../../db/read/bags.ts'
import { kitBalances } from '../../db/read/kits.ts'
import { labelsLeft } from '../../electron/desk/labels-left.ts'
import { books, transfersIn } from '../../electron/desk/ledger.ts'
import { balancesOf, linesOf } from '../../electron/station/ledger/book.ts'
import type { LedgerName } from '../../shared-types/views/ledger.ts'
import { day } from './deeds.ts'
import { Floor, type Start, stationToStartFrom } from './floor.ts'

let start: Start
beforeAll(async () => {
  start = await stationToStartFrom()
})
afterAll(() => start.end())

/** Adds a ledger up, checking on the way what holds of any ledger. */
function addedUp(log: ReadableLog, name: LedgerName): ReadonlyMap<string, number> {
  const transfers = transfersIn(log, books[name])
  const balances = balancesOf(transfers)
  expect([...balances.values()].reduce((sum, count) => sum + count, 0)).toBe(0)
  expect(transfers.every(({ count, from, to }) => count > 0 && from !== to)).toBe(true)
  for (const [account, balance] of balances) {
    expect(linesOf(transfers, account).at(-1)?.balance ?? 0, account).toBe(balance)
    if (account !== books[name].outside && account !== 'written-off')
      expect(balance, `${name}: ${account}`).toBeGreaterThanOrEqual(0)
  }
  return balances
}

function checkKits(log: ReadableLog): void {
  expect(addedUp(log, 'kits')).toEqual(kitBalances(log))
}

function checkLabels(log: ReadableLog): void {
  const balances = addedUp(log, 'labels')
  const { blanks, printed, used, void: voided } = labelsLeft(log)
  const of = (account: string) => balances.get(account) ?? 0
  expect([of('blank'), of('unused'), of('used'), of('void')]).toEqual([
    blanks,
    printed,
    used,
    voided,
  ])
}

function checkBags(log: ReadableLog): void {
  const balances = addedUp(log, 'bags')
  expect(balances.get('bench') ?? 0).toBe(bagsOnBench(log).length)
  const bags = allBags(log)
  expect(balances.get('sent') ?? 0).toBe(bags.filter(({ place }) => place === 'handed-off').length)
  for (const [account, count] of balances) {
    const [, cooler] = account.split('cooler:')
    const inside = bags.filter((bag) => bag.place === 'cooler' && bag.cooler === cooler)
    if (cooler !== undefined) expect(count, account).toBe(inside.length)
  }
}

test('kits, labels and bags are each in one account, and every balance is the sum of its entries', async () => {
  await fc.assert(
    fc.asyncProperty(day, async (deeds) => {
      const floor = new Floor(start)
      try {
        await floor.open()
        for (const { deed, a, b, c } of deeds) await deed(floor, a, b, c)
        await floor.shut()
        const log = readLog(floor.path)
        if (!log.ok) throw new Error(log.refusal.say)
        for (const check of [checkKits, checkLabels, checkBags]) check(log.value)
        log.value.close()
      } finally {
        await floor.end()
      }
    }),
    { seed: 20261115, numRuns: 10, endOnFailure: true },
  )
}, 120_000)
