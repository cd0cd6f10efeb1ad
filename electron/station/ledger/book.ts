/**
 * Ledgers by double entry: every entry that moves something takes as many out of one account as it
 * puts into another, so the accounts of a ledger always add up to nothing. Balances are added up from
 * the transfers, and kept nowhere.
 */
import type { KnownEntry } from '../../../shared-types/entry.ts'

/** So many things move from one account to another by one entry. */
export interface Transfer {
  readonly entry: KnownEntry
  readonly from: string
  readonly to: string
  readonly count: number
}

/** A ledger: reads entries in their order, and says what each moves. */
export interface Book {
  readonly kinds: readonly KnownEntry['kind'][]
  readonly transfers: (entries: Iterable<KnownEntry>) => Transfer[]
  /** The account that stands for the world outside, where everything comes from. */
  readonly outside: string
  readonly words: (account: string, nameOf: (number: string) => string) => string
}

/** Every account's balance, in the order in which they were first used. */
export function balancesOf(transfers: readonly Transfer[]): ReadonlyMap<string, number> {
  const balances = new Map<string, number>()
  const add = (account: string, count: number) =>
    balances.set(account, (balances.get(account) ?? 0) + count)
  for (const { from, to, count } of transfers) {
    add(from, -count)
    add(to, count)
  }
  return balances
}

/** A transfer as one account sees it. */
export interface AccountLine {
  readonly entry: KnownEntry
  readonly other: string
  readonly delta: number
  /** The balance after it. */
  readonly balance: number
}

/** What went into and out of an account, oldest first. */
export function linesOf(transfers: readonly Transfer[], account: string): AccountLine[] {
  let balance = 0
  return transfers.flatMap(({ entry, from, to, count }) => {
    if (from !== account && to !== account) return []
    const delta = to === account ? count : -count
    balance += delta
    return [{ entry, other: to === account ? from : to, delta, balance }]
  })
}
