/** Tissue of one animal: where it lies, what the sampler saw, how it is kept. */
import { z } from 'zod'
import { AnimalNumber, BagNumber, type BagPart, CoolerNumber, KitNumber } from './sample-number.ts'

/** Left and right medial retropharyngeal lymph node; the obex of the brainstem where the programme asks. */
export const TissueSite = z.enum(['left', 'right', 'obex'])
export type TissueSite = z.infer<typeof TissueSite>

export const siteWords: Record<TissueSite, string> = {
  left: 'left node',
  right: 'right node',
  obex: 'obex',
}
export const sitePart: Record<TissueSite, BagPart> = { left: 'L', right: 'R', obex: 'X' }

/** What the sampler saw and felt on the cut face. */
export const TissueCheck = z.enum([
  'lymph-node',
  'salivary-gland',
  'muscle',
  'fat',
  'obex',
  'unsure',
])
export type TissueCheck = z.infer<typeof TissueCheck>

export const checkWords: Record<TissueCheck, string> = {
  'lymph-node': 'lymph node',
  'salivary-gland': 'salivary gland',
  muscle: 'muscle',
  fat: 'fat',
  obex: 'obex',
  unsure: 'unsure',
}

/**
 * How a tissue is kept decides the test it can have: fresh tissue an immunoassay (ELISA), and it may be
 * frozen; tissue in formalin immunohistochemistry (IHC), and it must never be frozen.
 */
export const Kept = z.enum(['fresh', 'formalin'])
export type Kept = z.infer<typeof Kept>

export const keptWords: Record<Kept, string> = { fresh: 'fresh', formalin: 'in formalin' }

export const MissedReason = z.enum([
  'not-found',
  'shot-away',
  'cut-away',
  'spoiled',
  'frozen-head',
  'consent-withdrawn',
  'other',
])
export type MissedReason = z.infer<typeof MissedReason>

export const missedWords: Record<MissedReason, string> = {
  'not-found': 'not found',
  'shot-away': 'shot away',
  'cut-away': 'cut away before',
  spoiled: 'spoiled',
  'frozen-head': 'head frozen',
  'consent-withdrawn': 'hunter withdrew consent',
  other: 'other',
}

/** The longest side in millimetres; a retropharyngeal node is about 21 to 24 mm (common practice, no source). */
const SizeMm = z.number().min(1).max(120)

export const TissueChecked = z.strictObject({
  animal: AnimalNumber,
  kit: KitNumber,
  site: TissueSite,
  check: TissueCheck,
  sizeMm: SizeMm.nullable(),
})

export const TissueMissed = z.strictObject({
  animal: AnimalNumber,
  site: TissueSite,
  reason: MissedReason,
  words: z.string().max(200),
})

/** What was recorded of a side was a slip: it is to be looked at again. */
export const TissueReopened = z.strictObject({ animal: AnimalNumber, site: TissueSite })

/** One tissue sealed in its labelled inner bag; the hold clock starts here. */
export const BagSealed = z.strictObject({
  bag: BagNumber,
  animal: AnimalNumber,
  kit: KitNumber,
  site: TissueSite,
  kept: Kept,
})

export const BagDiscarded = z.strictObject({
  bag: BagNumber,
  reason: z.string().min(3).max(200),
})

export const BagPlaced = z.strictObject({ bag: BagNumber, cooler: CoolerNumber })

export const BagTakenOut = z.strictObject({
  bag: BagNumber,
  cooler: CoolerNumber,
  reason: z.string().min(3).max(200),
})

/** Where a bag is: always exactly one place. */
export const BagPlace = z.enum(['bench', 'cooler', 'handed-off', 'discarded'])
export type BagPlace = z.infer<typeof BagPlace>

/** What is known of one site of an animal. */
export interface TissueRecord {
  readonly site: TissueSite
  readonly seen: TissueCheck | null
  readonly sizeMm: number | null
  readonly missed: MissedReason | null
  readonly missedWords: string
  readonly bag: BagNumber | null
}

/** A sealed bag as the log knows it now. */
export interface BagRecord {
  readonly bag: BagNumber
  readonly animal: AnimalNumber
  readonly kit: KitNumber
  readonly site: TissueSite
  readonly kept: Kept
  readonly sealedMs: number
  readonly place: BagPlace
  readonly cooler: CoolerNumber | null
}
