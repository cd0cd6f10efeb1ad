import type { LabelFate, VoidReason } from '../../shared-types/label.ts'
import type { AccountBalance } from '../../shared-types/views/kits.ts'
import type { ShapeKind } from '../parts/shape.tsx'

/** Whose hands an account is, or the place: the desk words it `in hand: Name`. */
export function holderName({ words }: AccountBalance): string {
  return words.replace(/^in hand: /, '')
}

/** Why a person makes a label void; the desk itself adds the other reasons. */
export const voidWords = {
  torn: 'torn',
  smeared: 'smeared',
  misprinted: 'misprinted',
  jammed: 'jammed in the printer',
  lost: 'lost',
  other: 'other',
} as const satisfies Partial<Record<VoidReason, string>>

export const fateShapes: Record<LabelFate, ShapeKind> = {
  printed: 'soon',
  used: 'fine',
  void: 'idle',
}

export const fateWords: Record<LabelFate, string> = {
  printed: 'printed, not yet used',
  used: 'used',
  void: 'void',
}
