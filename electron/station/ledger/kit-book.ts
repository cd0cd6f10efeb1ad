import { type KitAccount, kitAccountKey } from '../../../shared-types/kit.ts'
import type { PersonId } from '../../../shared-types/sample-number.ts'
import type { KnownEntry } from '../../../shared-types/entry.ts'
import { accountWords } from '../kit-ledger.ts'
import type { Book, Transfer } from './book.ts'

/** What an entry does to the kits: from where to where, and how many. */
function moveOf(entry: KnownEntry): { from: KitAccount; to: KitAccount; count: number } | null {
  switch (entry.kind) {
    case 'kits.moved':
      return entry.body
    case 'kit.opened':
      return { from: { in: 'hands', person: entry.body.sampler }, to: { in: 'used' }, count: 1 }
    case 'kit.spoiled':
      return { from: entry.body.from, to: { in: 'spoiled' }, count: 1 }
    case 'handoff.signed':
      return { from: { in: 'used' }, to: { in: 'sent' }, count: entry.body.kits.length }
    default:
      return null
  }
}

function transfersOf(entry: KnownEntry): Transfer[] {
  const move = moveOf(entry)
  if (!move || move.count === 0) return []
  return [{ entry, from: kitAccountKey(move.from), to: kitAccountKey(move.to), count: move.count }]
}

function accountOf(key: string): KitAccount {
  const [, person] = key.split('hands:')
  return person === undefined
    ? ({ in: key } as KitAccount)
    : { in: 'hands', person: person as PersonId }
}

/** Kits: from the delivery over stock and hands to used, sent, spoiled or missing. */
export const kitBook: Book = {
  kinds: ['kits.moved', 'kit.opened', 'kit.spoiled', 'handoff.signed'],
  transfers: (entries) => Array.from(entries).flatMap(transfersOf),
  outside: 'delivered',
  words: (account, nameOf) => accountWords(accountOf(account), nameOf),
}
