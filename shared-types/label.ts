/** Labels: each printed copy is known, and belongs to one number. */
import { z } from 'zod'
import { SampleNumber } from './sample-number.ts'

/** The first print of a number is copy 1; a reprint is copy 2, and copy 1 must be void first. */
export const LabelCopy = z.strictObject({ number: SampleNumber, copy: z.int().min(1).max(99) })
export type LabelCopy = z.infer<typeof LabelCopy>

/** Label stocks by size; their measurements live with the printing code. */
export const StockName = z.enum(['roll-51x25', 'sheet-letter', 'sheet-a4'])
export type StockName = z.infer<typeof StockName>

export const LabelsPrinted = z.strictObject({
  labels: z.array(LabelCopy).min(1),
  stock: StockName,
  /** Blank labels used up; a data card or a stub may take more than one. */
  blanks: z.int().min(1),
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
