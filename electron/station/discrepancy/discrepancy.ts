/** What a discrepancy is made of: what is in dispute, the evidence of each side, and the ways out. */
import {
  type DiscrepancyKind,
  type SettleChoice,
  settleWords,
} from '../../../shared-types/discrepancy.ts'
import type { Ruling } from '../../../shared-types/ruling.ts'
import type { DeskId } from '../../../shared-types/sample-number.ts'

/** One side, with what speaks for it. */
export interface Side {
  /** Names the side in a settlement: a number, or the hash of an entry. */
  readonly key: string
  readonly title: string
  /** One plain sentence each. */
  readonly lines: readonly string[]
  readonly desk: DeskId | null
  /** When it was recorded, on that desk's clock. */
  readonly ms: number | null
  /** What is so in the record if this side holds; absent where that is only put on record. */
  readonly holds?: Ruling
}

export interface Discrepancy {
  readonly kind: DiscrepancyKind
  /** Everything it rests on. Its id follows from this: the same evidence is the same discrepancy. */
  readonly evidence: readonly string[]
  readonly say: string
  /** What to do before settling it. */
  readonly next: string
  readonly sides: readonly Side[]
}

/** The ways to settle each kind, the most likely first. */
const choices: Readonly<Record<DiscrepancyKind, readonly SettleChoice[]>> = {
  'tag-twice': ['one-holds', 'all-hold', 'same-animal', 'cannot-tell'],
  'checked-in-twice': ['same-animal', 'all-hold', 'cannot-tell'],
  'bag-twice': ['one-holds', 'cannot-tell'],
  'bag-in-two-places': ['one-holds', 'lost', 'cannot-tell'],
  'bag-on-two-manifests': ['one-holds', 'lost', 'cannot-tell'],
  'kit-twice': ['one-holds', 'all-hold', 'cannot-tell'],
  'facts-contradict': ['one-holds', 'cannot-tell'],
  'amended-after-close': ['acknowledged', 'cannot-tell'],
  'clocks-apart': ['acknowledged', 'one-holds', 'cannot-tell'],
  fork: ['all-hold', 'one-holds', 'cannot-tell'],
  'broken-chain': ['acknowledged', 'lost'],
  gap: ['acknowledged', 'lost'],
  altered: ['acknowledged', 'lost'],
  'damaged-file': ['acknowledged', 'lost'],
  'bag-not-received': ['lost', 'acknowledged', 'cannot-tell'],
  'bag-received-extra': ['acknowledged', 'cannot-tell'],
  'bag-received-damaged': ['acknowledged', 'lost'],
}

/** What the ways mean for one kind, where the plain words would not say it. */
const ownWords: Partial<Record<DiscrepancyKind, Partial<Record<SettleChoice, string>>>> = {
  'tag-twice': {
    'one-holds': 'One animal has the tag; the other was mistyped',
    'all-hold': 'Both have it: two series of tags with the same number',
    'same-animal': 'One animal, recorded twice: keep the record chosen',
  },
  'checked-in-twice': {
    'same-animal': 'One animal, recorded twice: keep the record chosen',
    'all-hold': 'Two animals after all',
  },
  'bag-twice': {
    'one-holds': 'The bag holds the tissue chosen',
    'cannot-tell': 'Nobody can tell: no test may be reported under this number',
  },
  'bag-in-two-places': { 'one-holds': 'The bag is in the cooler chosen', lost: 'It is in neither' },
  'bag-on-two-manifests': {
    'one-holds': 'The bag went with the manifest chosen',
    lost: 'It went with neither',
  },
  'kit-twice': {
    'one-holds': 'The kit was used on the animal chosen',
    'all-hold': 'Both used it: its labels were printed twice',
  },
  'facts-contradict': { 'one-holds': 'What is chosen is right' },
  'amended-after-close': { acknowledged: 'Right: the close sheet is printed again' },
  'clocks-apart': {
    acknowledged: 'Known: times are read with this in mind',
    'one-holds': 'The clock of the desk chosen was right',
  },
  fork: {
    'all-hold': 'Both copies recorded what happened',
    'one-holds': 'Only the copy chosen recorded what happened',
  },
  'broken-chain': {
    acknowledged: 'Still looked for: what came before may turn up in another file',
    lost: 'What came before is lost for good',
  },
  gap: {
    acknowledged: 'Still looked for: another copy of the file may have them',
    lost: 'They are lost for good',
  },
  altered: {
    acknowledged: 'Still looked for: another copy may have the entry as it was made',
    lost: 'The entry as it was made is lost for good',
  },
  'damaged-file': {
    acknowledged: 'Nothing is missing: this was the end of the log',
    lost: 'What came after is lost for good',
  },
  'bag-not-received': {
    lost: 'It was looked for and is lost',
    acknowledged: 'It was found: at the station, or at the laboratory',
  },
  'bag-received-extra': {
    acknowledged: 'Known: its own manifest is put right, or it goes back',
  },
  'bag-received-damaged': {
    acknowledged: 'It can still be tested',
    lost: 'It cannot be tested any more',
  },
}

export interface Way {
  readonly choice: SettleChoice
  readonly words: string
  /** Whether it names the side that holds. */
  readonly namesSide: boolean
}

/** `same-animal` names the record that is to be kept. */
function namesSide(choice: SettleChoice): boolean {
  return choice === 'one-holds' || choice === 'same-animal'
}

/** The ways to settle a discrepancy of a kind. */
export function waysOf(kind: DiscrepancyKind): Way[] {
  return choices[kind].map((choice) => ({
    choice,
    words: ownWords[kind]?.[choice] ?? settleWords[choice],
    namesSide: namesSide(choice),
  }))
}
