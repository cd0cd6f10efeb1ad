import type { EntryBody, KnownEntry } from '../../../shared-types/entry.ts'
import type { LabelCopy } from '../../../shared-types/label.ts'
import { kitOf, numberParts, type SampleNumber } from '../../../shared-types/sample-number.ts'
import type { Book, Transfer } from './book.ts'

const words: Readonly<Record<string, string>> = {
  delivered: 'delivered to the station',
  blank: 'blank, on rolls and sheets',
  spare: 'used up beside a print (cards, stubs, rest of a sheet)',
  unused: 'printed, not used',
  used: 'used',
  void: 'void',
  'written-off': 'written off at a close',
}

type Fate = 'unused' | 'used' | 'void'
const isSample = (number: SampleNumber) => 'LRX'.includes(numberParts(number).part)
const isPaper = (number: SampleNumber) => 'KH'.includes(numberParts(number).part)

/** The copies printed so far and what became of each. */
class Copies {
  readonly #fates = new Map<SampleNumber, Fate[]>()
  readonly #opened = new Set<string>()
  readonly #sealed = new Set<SampleNumber>()

  /** A copy comes into being: on a kit in use, or a bag that is sealed, it is used at once. */
  print({ number, copy }: LabelCopy): Fate {
    const isUsed = isSample(number)
      ? this.#sealed.has(number)
      : !isPaper(number) || this.#opened.has(kitOf(number))
    return this.#set(number, copy, isUsed ? 'used' : 'unused')
  }

  #set(number: SampleNumber, copy: number, fate: Fate): Fate {
    const fates = this.#fates.get(number) ?? []
    fates[copy - 1] = fate
    this.#fates.set(number, fates)
    return fate
  }

  /** Makes a copy void; answers with what it was before, or null if nothing changes. */
  void({ number, copy }: LabelCopy): Fate | null {
    const before = this.#fates.get(number)?.[copy - 1]
    if (before === undefined || before === 'void') return null
    this.#set(number, copy, 'void')
    return before
  }

  /** The good copies of these numbers are used now; answers how many were not before. */
  use(numbers: readonly SampleNumber[]): number {
    let used = 0
    for (const number of numbers)
      this.#fates.get(number)?.forEach((fate, place) => {
        if (fate !== 'unused') return
        this.#set(number, place + 1, 'used')
        used += 1
      })
    return used
  }

  openKit(kit: SampleNumber): SampleNumber[] {
    this.#opened.add(kit)
    return [...this.#fates.keys()].filter((number) => isPaper(number) && kitOf(number) === kit)
  }

  sealBag(bag: SampleNumber): SampleNumber[] {
    this.#sealed.add(bag)
    return [bag]
  }
}

function printed(copies: Copies, entry: Extract<KnownEntry, { kind: 'labels.printed' }>) {
  const { labels, blanks } = entry.body
  const fates = labels.map((label) => copies.print(label))
  const used = fates.filter((fate) => fate === 'used').length
  return [
    { entry, from: 'blank', to: 'unused', count: labels.length - used },
    { entry, from: 'blank', to: 'used', count: used },
    { entry, from: 'blank', to: 'spare', count: blanks - labels.length },
  ]
}

/**
 * What a signed close found over (or short, then less than nothing) of blank labels. It is settled with
 * that signature: a day opened again goes on from what was counted.
 */
export function blanksOff({ items }: EntryBody<'day.closed'>): number {
  const blank = items.find(({ item }) => item.of === 'blank-labels')
  return blank ? blank.counted - blank.expected : 0
}

function transfersOf(copies: Copies, entry: KnownEntry): Transfer[] {
  switch (entry.kind) {
    case 'day.opened':
      return [{ entry, from: 'delivered', to: 'blank', count: entry.body.blankLabels }]
    case 'labels.printed':
      return printed(copies, entry)
    case 'label.voided': {
      const before = copies.void(entry.body)
      return before === null ? [] : [{ entry, from: before, to: 'void', count: 1 }]
    }
    case 'kit.opened': {
      const count = copies.use(copies.openKit(entry.body.kit))
      return [{ entry, from: 'unused', to: 'used', count }]
    }
    case 'bag.sealed': {
      const count = copies.use(copies.sealBag(entry.body.bag))
      return [{ entry, from: 'unused', to: 'used', count }]
    }
    case 'day.closed':
      return [{ entry, from: 'written-off', to: 'blank', count: blanksOff(entry.body) }]
    default:
      return []
  }
}

/** The way round in which the count is not negative. */
function positive({ entry, from, to, count }: Transfer): Transfer[] {
  if (count === 0) return []
  return [count > 0 ? { entry, from, to, count } : { entry, from: to, to: from, count: -count }]
}

/** Labels: from blank to printed, and on to used or void. */
export const labelBook: Book = {
  kinds: ['day.opened', 'labels.printed', 'label.voided', 'kit.opened', 'bag.sealed', 'day.closed'],
  transfers: (entries) => {
    const copies = new Copies()
    return Array.from(entries).flatMap((entry) => transfersOf(copies, entry).flatMap(positive))
  },
  outside: 'delivered',
  words: (account) => words[account] ?? account,
}
