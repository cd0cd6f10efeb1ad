/**
 * The likely cause of each variance, out of the log itself: what it shows that would make just this
 * difference. Ranked by how well it is borne out; it is for a person to look, and to settle.
 */
import type { CoolerState } from '../../shared-types/cooler.ts'
import type { VoidReason } from '../../shared-types/label.ts'
import type { Duty } from '../../shared-types/person.ts'
import type {
  AnimalNumber,
  BagNumber,
  CoolerNumber,
  KitNumber,
  PersonId,
  SampleNumber,
} from '../../shared-types/sample-number.ts'
import type { Cause } from '../../shared-types/views/cause.ts'
import type { CloseItem } from '../../shared-types/views/close.ts'
import { animalCauses, animalsBetween } from './cause/animals.ts'
import { bagCauses, bagsBetween } from './cause/bags.ts'
import { handCauses, stockCauses } from './cause/kits.ts'
import { blankCauses, unusedLabelCauses } from './cause/labels.ts'
import { differs } from './reconcile.ts'

/** What the log holds that may explain a variance of the day. Times are ready to be read out. */
export interface Evidence {
  readonly hands: readonly {
    readonly person: PersonId
    readonly name: string
    readonly duty: Duty
    /** Since when the duty is so; '' while it never changed. */
    readonly dutySince: string
    readonly kits: number
    /** When kits were last handed to them; '' for never. */
    readonly lastHanded: string
  }[]
  /** Kits that somebody else than the sampler told the desk of, with who had the animal before. */
  readonly openedForAnother: readonly {
    readonly kit: KitNumber
    readonly animal: AnimalNumber
    readonly sampler: PersonId
    readonly before: PersonId | null
    readonly at: string
  }[]
  /** Kits nobody opened whose labels are all void as spoiled, though the kit is not. */
  readonly voidedAsSpoiled: readonly { readonly kit: KitNumber; readonly at: string }[]
  /** Copies that are void and were printed once more. */
  readonly reprinted: readonly {
    readonly number: SampleNumber
    readonly copy: number
    readonly reason: VoidReason
    readonly at: string
  }[]
  readonly bench: readonly { readonly bag: BagNumber; readonly at: string }[]
  readonly coolers: readonly {
    readonly cooler: CoolerNumber
    readonly name: string
    readonly state: CoolerState
  }[]
  /** The cooler in which the log has a bag. */
  readonly coolerOf: (bag: BagNumber) => CoolerNumber | null
  readonly withSampler: readonly {
    readonly animal: AnimalNumber
    readonly name: string
    readonly duty: Duty
    readonly since: string
    readonly bags: number
    /** Tissues neither bagged nor said to be missing. */
    readonly openSites: number
  }[]
  /** Tags that came more than once today, each with its later animal. */
  readonly twice: readonly { readonly tag: string; readonly animal: AnimalNumber }[]
}

/** What a rule sees: the item, how far it is off, the other items, and the evidence. */
export interface Variance {
  readonly item: CloseItem
  readonly off: number
  readonly items: readonly CloseItem[]
  readonly evidence: Evidence
}

const shownCauses = 4

function causesOf(variance: Variance): Cause[] {
  switch (variance.item.item.of) {
    case 'animals':
      return animalCauses(variance)
    case 'bags':
      return bagCauses(variance, variance.item.item.cooler)
    case 'kits-in-stock':
      return stockCauses(variance)
    case 'kits-in-hand':
      return handCauses(variance, variance.item.item.person)
    case 'blank-labels':
      return blankCauses(variance)
    case 'unused-kit-labels':
      return unusedLabelCauses(variance)
  }
}

/** The items with the likely causes of those that differ. */
export function withCauses(items: readonly CloseItem[], evidence: Evidence): CloseItem[] {
  return items.map((item) => {
    if (!differs(item)) return item
    const causes = causesOf({ item, off: item.variance ?? 0, items, evidence })
    return { ...item, causes: ranked(causes).slice(0, shownCauses) }
  })
}

/** Animals and bags that the log has in between, each with what seems to have happened. */
export function causesBetween(items: readonly CloseItem[], evidence: Evidence): Cause[] {
  return ranked([...animalsBetween(evidence), ...bagsBetween(items, evidence)])
}

function ranked(causes: readonly Cause[]): Cause[] {
  return causes.toSorted((a, b) => b.evidence - a.evidence || (a.about < b.about ? -1 : 1))
}
