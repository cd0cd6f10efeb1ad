import type { LabelFate } from '../../shared-types/label.ts'
import type { AccountBalance } from '../../shared-types/views/kits.ts'
import type { ShapeKind } from '../parts/shape.tsx'

/** Whose hands an account is, or the place: the desk words it `in hand: Name`. */
export function holderName({ words }: AccountBalance): string {
  return words.replace(/^in hand: /, '')
}

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
