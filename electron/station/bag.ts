/** Bags: sealed under the label of their kit and side, and discarded when they are torn, dropped or wrong. */
import type { AnimalRecord } from '../../shared-types/animal.ts'
import { draft, type EntryDraft } from '../../shared-types/entry.ts'
import type { KitRecord } from '../../shared-types/kit.ts'
import type { LabelRecord } from '../../shared-types/label.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import {
  type BagNumber,
  grouped,
  kitOf,
  numberParts,
  partWords,
} from '../../shared-types/sample-number.ts'
import type { StationSettings } from '../../shared-types/station.ts'
import {
  type BagRecord,
  checkWords,
  sitePart,
  siteWords,
  type TissueRecord,
  type TissueSite,
} from '../../shared-types/tissue.ts'
import { liveCopy } from './labels.ts'
import {
  type BenchRecord,
  checkAdvice,
  checkSite,
  isBaggable,
  kitNeeded,
  outcomeOf,
} from './tissue.ts'

/** Seals a bag: the label scanned back onto it must be this kit's label for this side. */
export function decideSealBag(
  bench: BenchRecord,
  settings: StationSettings,
  seal: { site: TissueSite; bag: BagNumber; copies: readonly LabelRecord[] },
): Result<EntryDraft[]> {
  const sound = checkSite(bench, settings, seal.site)
  if (!sound.ok) return sound
  const { animal, kit } = bench
  if (!kit) return kitNeeded(animal)
  const right = checkLabel(kit, seal.site, seal.bag)
  if (!right.ok) return right
  const tissue = bench.tissues.find((each) => each.site === seal.site)
  if (!tissue?.seen)
    return refused(
      'look-first',
      `Nobody has said yet what the ${siteWords[seal.site]} looks like on its cut face.`,
      'Choose what you saw, then scan the bag again.',
      'site',
    )
  if (!isBaggable(seal.site, tissue.seen))
    return refused(
      'wrong-tissue',
      `The last look at the ${siteWords[seal.site]} was ${checkWords[tissue.seen]}.`,
      checkAdvice(seal.site, tissue.seen),
      'site',
    )
  if (!liveCopy(seal.copies))
    return refused(
      'label-void',
      `Label ${grouped(seal.bag)} was never printed or is void.`,
      'Reprint it on the kits screen and use the new copy.',
      'bag',
    )
  const kept = settings.tissues.find((each) => each.site === seal.site)?.kept ?? 'fresh'
  return granted([
    draft('bag.sealed', {
      bag: seal.bag,
      animal: animal.animal,
      kit: kit.kit,
      site: seal.site,
      kept,
    }),
  ])
}

function checkLabel(kit: KitRecord, site: TissueSite, bag: BagNumber): Result<null> {
  if (kitOf(bag) !== kit.kit)
    return refused(
      'bag-of-another-kit',
      `Bag ${grouped(bag)} belongs to another kit; this animal has kit ${grouped(kit.kit)}.`,
      'Find the bag of this kit. Do not swap labels.',
      'bag',
    )
  const { part } = numberParts(bag)
  if (part !== sitePart[site])
    return refused(
      'wrong-side',
      `That is the ${partWords[part]} label, and the tissue is the ${siteWords[site]}.`,
      `Put the tissue into the ${partWords[sitePart[site]]}.`,
      'bag',
    )
  return granted(null)
}

export interface DiscardView {
  readonly bag: BagRecord
  readonly animal: AnimalRecord
  readonly tissues: readonly TissueRecord[]
  readonly copies: readonly LabelRecord[]
}

/**
 * Discards a sealed bag that is torn, dropped or wrong, and its label with it. While the animal is in
 * hand its site is open again; a finished animal gets the outcome that is left.
 */
export function decideDiscardBag(view: DiscardView, reason: string): Result<EntryDraft[]> {
  const { bag, animal } = view
  const here = checkOnBench(bag)
  if (!here.ok) return here
  const live = liveCopy(view.copies)
  const left = view.tissues.filter((each) => each.bag !== bag.bag)
  return granted([
    draft('bag.discarded', { bag: bag.bag, reason }),
    ...(live
      ? [
          draft('label.voided', {
            number: bag.bag,
            copy: live.copy,
            reason: 'other',
            words: reason,
          }),
        ]
      : []),
    ...(animal.state === 'finished' && animal.outcome !== outcomeOf(left)
      ? [draft('animal.outcome-changed', { animal: animal.animal, outcome: outcomeOf(left) })]
      : []),
  ])
}

function checkOnBench({ bag, place }: BagRecord): Result<null> {
  switch (place) {
    case 'bench':
      return granted(null)
    case 'handed-off':
      return refused(
        'bag-handed-off',
        `Bag ${grouped(bag)} has left with the courier.`,
        'Tell the laboratory instead.',
        'bag',
      )
    case 'discarded':
      return refused(
        'bag-already-discarded',
        `Bag ${grouped(bag)} is already discarded.`,
        'Nothing needs doing.',
        'bag',
      )
    case 'cooler':
      return refused(
        'bag-in-cooler',
        `Bag ${grouped(bag)} is in a cooler.`,
        'Take it out of the cooler first.',
        'bag',
      )
  }
}
