/** Kits: the ledger, and each numbered kit with its labels. */
import type { ReadableLog } from '../../db/connection.ts'
import { kitBalance, kitBalances, latestKits, reservedKits } from '../../db/read/kits.ts'
import { labelsOfKit } from '../../db/read/labels.ts'
import { people } from '../../db/read/people.ts'
import { type KitAccount, kitAccountKey, type KitRecord } from '../../shared-types/kit.ts'
import { granted, type Result } from '../../shared-types/result.ts'
import type { AccountBalance, NumberedKit } from '../../shared-types/views/kits.ts'
import { accountWords, decideMoveKits, decideSpoilKit } from '../station/kit-ledger.ts'
import type { CommandHandlers, QueryHandlers } from './call.ts'
import { done } from './decided.ts'
import { findKit, findPerson } from './find.ts'
import { labelsLeft } from './labels-left.ts'
import { namesOf } from './names.ts'

function accounts(log: ReadableLog): KitAccount[] {
  const balances = kitBalances(log)
  const hands = people(log)
    .filter(
      ({ person, active, role }) =>
        (active && role !== 'office') ||
        (balances.get(kitAccountKey({ in: 'hands', person })) ?? 0) !== 0,
    )
    .map(({ person }) => ({ in: 'hands', person }) as const)
  return [
    { in: 'stock' },
    ...hands,
    { in: 'used' },
    { in: 'sent' },
    { in: 'spoiled' },
    { in: 'missing' },
    { in: 'other-desk' },
    { in: 'delivered' },
  ]
}

/** The ledger's balances. `delivered` is shown as the number of kits that ever came. */
function balancesOf(log: ReadableLog): AccountBalance[] {
  const nameOf = namesOf(log)
  const balances = kitBalances(log)
  return accounts(log).map((account) => {
    const key = kitAccountKey(account)
    const count = balances.get(key) ?? 0
    return {
      key,
      account,
      words: accountWords(account, nameOf),
      count: account.in === 'delivered' ? 0 - count : count,
    }
  })
}

function numberedKit(log: ReadableLog, kit: KitRecord): NumberedKit {
  return {
    kit: kit.kit,
    animal: kit.animal,
    state: kit.state,
    printedMs: kit.numberedMs,
    labels: labelsOfKit(log, kit.kit),
  }
}

export const kitQueries = {
  kits: ({ log }) =>
    granted({
      balances: balancesOf(log),
      reserved: reservedKits(log).map((kit) => numberedKit(log, kit)),
      latest: latestKits(log).map((kit) => numberedKit(log, kit)),
      labels: labelsLeft(log),
    }),
} satisfies Partial<QueryHandlers>

/** Hands must be those of someone here: else kits would leave the ledger unseen. */
function knownHands(
  log: ReadableLog,
  { from, to }: { from: KitAccount; to: KitAccount },
): Result<null> {
  for (const account of [from, to]) {
    const person = account.in === 'hands' ? findPerson(log, account.person) : granted(null)
    if (!person.ok) return person
  }
  return granted(null)
}

export const kitCommands = {
  'kits.move': ({ act, by }, move) =>
    act((tx) => {
      const known = knownHands(tx, move)
      if (!known.ok) return known
      const balance = kitBalance(tx, kitAccountKey(move.from))
      return done(decideMoveKits({ by, balance, nameOf: namesOf(tx) }, move))
    }),
  'kit.spoil': ({ act }, { kit: text, reason }) =>
    act((tx) => {
      const kit = findKit(tx, text)
      if (!kit.ok) return kit
      const labels = labelsOfKit(tx, kit.value.kit)
      return done(decideSpoilKit(kit.value, kitBalance(tx, 'stock'), labels, reason))
    }),
} satisfies Partial<CommandHandlers>
