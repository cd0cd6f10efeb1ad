import type { KnownEntry } from '../../../shared-types/entry.ts'
import type { BagNumber } from '../../../shared-types/sample-number.ts'
import type { Book, Transfer } from './book.ts'

const words: Readonly<Record<string, string>> = {
  sealed: 'sealed at the bench',
  bench: 'on the bench, in no cooler',
  sent: 'handed to a courier',
  discarded: 'discarded',
}

/** Where each bag is by the entries so far. A number used again after a discard is a new bag. */
class Places {
  readonly #places = new Map<BagNumber, string>()

  move(entry: KnownEntry, bag: BagNumber, to: string): Transfer[] {
    const from = to === 'bench' && entry.kind === 'bag.sealed' ? 'sealed' : this.#places.get(bag)
    if (from === undefined || from === to) return []
    this.#places.set(bag, to)
    return [{ entry, from, to, count: 1 }]
  }
}

function transfersOf(places: Places, entry: KnownEntry): Transfer[] {
  switch (entry.kind) {
    case 'bag.sealed':
    case 'bag.taken-out':
      return places.move(entry, entry.body.bag, 'bench')
    case 'bag.placed':
      return places.move(entry, entry.body.bag, `cooler:${entry.body.cooler}`)
    case 'bag.discarded':
      return places.move(entry, entry.body.bag, 'discarded')
    case 'handoff.signed':
      return entry.body.manifest.coolers.flatMap(({ bags }) =>
        bags.flatMap(({ bag }) => places.move(entry, bag, 'sent')),
      )
    default:
      return []
  }
}

/** Transfers of one entry between the same two accounts, told as one. */
function together(transfers: readonly Transfer[]): Transfer[] {
  const sums = new Map<string, Transfer>()
  for (const transfer of transfers) {
    const key = `${transfer.from}>${transfer.to}`
    const before = sums.get(key)?.count ?? 0
    sums.set(key, { ...transfer, count: before + transfer.count })
  }
  return [...sums.values()]
}

/** Bags: from the bench into a cooler and to the courier, or discarded. */
export const bagBook: Book = {
  kinds: ['bag.sealed', 'bag.placed', 'bag.taken-out', 'bag.discarded', 'handoff.signed'],
  transfers: (entries) => {
    const places = new Places()
    return Array.from(entries).flatMap((entry) => together(transfersOf(places, entry)))
  },
  outside: 'sealed',
  words: (account, nameOf) => {
    const [, cooler] = account.split('cooler:')
    return cooler === undefined ? (words[account] ?? account) : `in cooler ${nameOf(cooler)}`
  },
}
