/**
 * A reconciliation worked in print, put through the ledgers' own double entry: IRS Publication 583,
 * "Starting a Business and Keeping Records", sample record 7, "Bank Reconciliation as of January 31"
 * (irs.gov/media/167856). Two records of one account differ; each item moves between named accounts,
 * and both sides come to the same adjusted balance. Amounts in cents.
 */
import { describe, expect, test } from 'vitest'
import { balancesOf, linesOf, type Transfer } from '../../electron/station/ledger/book.ts'
import type { KnownEntry } from '../../shared-types/entry.ts'

const entry = {} as KnownEntry
const move = (from: string, to: string, dollars: number): Transfer => ({
  entry,
  from,
  to,
  count: Math.round(dollars * 100),
})

/** The bank's side: what it has not seen yet. */
const bank = [
  move('outside', 'bank', 1458.12),
  move('deposits not credited', 'bank', 701.33),
  move('deposits not credited', 'bank', 516.08),
  ...[66.7, 9.8, 150, 300].map((check) => move('bank', 'outstanding checks', check)),
]
/** The checkbook's side: a deposit entered too low, and a charge not entered. */
const checkbook = [
  move('outside', 'checkbook', 2153.03),
  move('entered wrong', 'checkbook', 600.4 - 594.4),
  move('checkbook', 'bank service charge', 10),
]

describe('the bank reconciliation of Publication 583', () => {
  const balances = balancesOf([...bank, ...checkbook])

  test('comes to 2,149.03 on both sides', () => {
    expect(balances.get('bank')).toBe(214_903)
    expect(balances.get('checkbook')).toBe(214_903)
  })

  test('has its printed subtotals: 1,217.41 not credited, 526.50 outstanding, 2,675.53 and 2,159.03', () => {
    expect(balances.get('deposits not credited')).toBe(-121_741)
    expect(balances.get('outstanding checks')).toBe(52_650)
    expect(linesOf(bank, 'bank').map(({ balance }) => balance)).toContain(267_553)
    expect(linesOf(checkbook, 'checkbook').map(({ balance }) => balance)).toContain(215_903)
  })

  test('explains the whole variance, and all accounts together hold nothing', () => {
    expect(145_812 - 215_303).toBe(-121_741 + 52_650 + 600 - 1000)
    expect([...balances.values()].reduce((sum, each) => sum + each, 0)).toBe(0)
  })
})
