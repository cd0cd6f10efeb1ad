/** Labels: what a kit is labelled with, and when a label may be void or printed again. */
import { draft, type EntryDraft } from '../../shared-types/entry.ts'
import type { LabelRecord, VoidReason } from '../../shared-types/label.ts'
import type { StockName } from '../../shared-types/label-stock.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import {
  type AnimalNumber,
  grouped,
  type KitNumber,
  numberParts,
  type SampleNumber,
  sampleNumber,
} from '../../shared-types/sample-number.ts'
import type { StationSettings } from '../../shared-types/station.ts'
import { sitePart } from '../../shared-types/tissue.ts'

/** The numbers of a kit's labels: a bag for each tissue taken here, the data card, the hunter's stub. */
export function kitLabelNumbers(kit: KitNumber, settings: StationSettings): SampleNumber[] {
  const { desk, serial } = numberParts(kit)
  const bags = settings.tissues.map(({ site }) => sampleNumber(desk, serial, sitePart[site]))
  return [...bags, kit, sampleNumber(desk, serial, 'H')]
}

/** What printing new kits appends: their numbers come into being with their labels. */
export function draftsOfNewKits(
  kits: readonly { kit: KitNumber; animal: AnimalNumber | null }[],
  settings: StationSettings,
  stock: StockName,
  blanks: number,
  byHand = false,
): EntryDraft[] {
  const labels = kits.flatMap(({ kit }) =>
    kitLabelNumbers(kit, settings).map((number) => ({ number, copy: 1 })),
  )
  return [
    ...kits.map(({ kit, animal }) => draft('kit.numbered', { kit, animal })),
    draft('labels.printed', { labels, stock, blanks, ...(byHand && { byHand }) }),
  ]
}

/** The copy that is not void: there is never more than one. */
export function liveCopy(copies: readonly LabelRecord[]): LabelRecord | null {
  return copies.find(({ fate }) => fate !== 'void') ?? null
}

function neverPrinted(number: SampleNumber): Result<never> {
  return refused(
    'label-never-printed',
    `No label ${grouped(number)} was printed here.`,
    'Check the number, or print the labels of its kit first.',
    'number',
  )
}

/** Makes a printed copy void. A label that sits on a sealed bag is replaced by a reprint, not voided. */
export function decideVoid(
  number: SampleNumber,
  copies: readonly LabelRecord[],
  reason: VoidReason,
  words: string,
): Result<EntryDraft[]> {
  if (copies.length === 0) return neverPrinted(number)
  const live = liveCopy(copies)
  if (!live)
    return refused(
      'label-already-void',
      `Label ${grouped(number)} is already void.`,
      'Nothing needs doing.',
      'number',
    )
  if (live.fate === 'used')
    return refused(
      'label-in-use',
      `Label ${grouped(number)} is in use.`,
      'If it is torn or cannot be read, reprint it: the old copy is then void.',
      'number',
    )
  return granted([draft('label.voided', { number, copy: live.copy, reason, words })])
}

interface Printing {
  readonly stock: StockName
  readonly blanks: number
}

/** Why a copy is printed again, and what became of the one before it. */
export interface Again {
  readonly reason: VoidReason
  readonly words: string
  /** Somebody has destroyed it, and says so. */
  readonly destroyed: boolean
}

/**
 * Refuses `first-copy-still-good`: while a copy may still be stuck on something, no second one is made.
 * A lost one cannot be destroyed; it is void, and whoever finds it finds that out.
 */
function checkCopyGone(
  number: SampleNumber,
  live: LabelRecord | null,
  { reason, destroyed }: Again,
): Result<null> {
  if (!live || destroyed || reason === 'lost') return granted(null)
  return refused(
    'first-copy-still-good',
    `Copy ${live.copy} of label ${grouped(number)} is still good: with a second one, one number could be on two things.`,
    'Destroy it and say so, make it void, or give it as lost.',
    'destroyed',
  )
}

/**
 * Prints one more copy of a number. The copy before it is void in the same action, so there are never
 * two good labels of one number. Refuses `first-copy-still-good`.
 */
export function decideCopy(
  number: SampleNumber,
  copies: readonly LabelRecord[],
  again: Again,
  print: Printing,
): Result<EntryDraft[]> {
  const live = liveCopy(copies)
  const gone = checkCopyGone(number, live, again)
  return gone.ok ? granted(draftsOfCopy(number, copies, again, print)) : gone
}

function draftsOfCopy(
  number: SampleNumber,
  copies: readonly LabelRecord[],
  { destroyed, ...why }: Again,
  print: Printing,
): EntryDraft[] {
  const live = liveCopy(copies)
  return [
    ...(live
      ? [
          draft('label.voided', {
            number,
            copy: live.copy,
            ...why,
            ...(destroyed && { destroyed }),
          }),
        ]
      : []),
    draft('labels.printed', { labels: [{ number, copy: copies.length + 1 }], ...print }),
  ]
}

/**
 * Prints a label again, or for the first time where its kit was labelled before the station began to
 * take this tissue. `ofKit`: the labels of its kit by the settings of now. Refuses `label-never-printed`
 * and `first-copy-still-good`.
 */
export function decideReprint(
  number: SampleNumber,
  copies: readonly LabelRecord[],
  ofKit: readonly SampleNumber[],
  again: Again,
  print: Printing,
): Result<EntryDraft[]> {
  if (copies.length === 0 && !ofKit.includes(number)) return neverPrinted(number)
  return decideCopy(number, copies, again, print)
}
