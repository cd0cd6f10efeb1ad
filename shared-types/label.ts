/** Labels: each printed copy is known, and belongs to one number. */
import { z } from 'zod'
import { StockName } from './label-stock.ts'
import { SampleNumber } from './sample-number.ts'

/** The first print of a number is copy 1; a reprint is copy 2, and copy 1 must be void first. */
export const LabelCopy = z.strictObject({ number: SampleNumber, copy: z.int().min(1).max(99) })
export type LabelCopy = z.infer<typeof LabelCopy>

/** A run of labels is named by the hash of its `labels.printed`. */
const RunHash = z.string().regex(/^[0-9a-f]{64}$/)

export const LabelsPrinted = z.strictObject({
  labels: z.array(LabelCopy).min(1),
  stock: StockName,
  /** Blank labels used up; a data card or a stub may take more than one. */
  blanks: z.int().min(1),
  /** Species and date were left to be written by hand. */
  byHand: z.boolean().optional(),
  /** These take the place of labels that a jam ruined; after them that run goes on with this label. */
  goesOn: z.strictObject({ run: RunHash, from: z.int().min(0) }).optional(),
})

/**
 * A run of labels went on after it had stopped: `last` was the last that came out good (null: none), and
 * so many after it came out ruined.
 */
export const LabelsResumed = z.strictObject({
  run: RunHash,
  last: SampleNumber.nullable(),
  ruined: z.int().min(0),
})

export const VoidReason = z.enum([
  'torn',
  'smeared',
  'misprinted',
  'jammed',
  'kit-spoiled',
  'not-taken',
  'lost',
  'other',
])
export type VoidReason = z.infer<typeof VoidReason>

export const voidWords: Record<VoidReason, string> = {
  torn: 'torn',
  smeared: 'smeared',
  misprinted: 'misprinted',
  jammed: 'jammed in the printer',
  'kit-spoiled': 'kit spoiled',
  'not-taken': 'tissue not taken',
  lost: 'lost',
  other: 'other',
}

export const LabelVoided = z.strictObject({
  number: SampleNumber,
  copy: z.int().min(1).max(99),
  reason: VoidReason,
  words: z.string().trim().max(200),
  /** Somebody had it in their hands and destroyed it. */
  destroyed: z.boolean().optional(),
})

/** What became of a printed copy. */
export const LabelFate = z.enum(['printed', 'used', 'void'])
export type LabelFate = z.infer<typeof LabelFate>

/** A printed copy as the log knows it now. */
export interface LabelRecord {
  readonly number: SampleNumber
  readonly copy: number
  readonly fate: LabelFate
}
