import { type ResultWord, resultWords } from '../../shared-types/laboratory-result.ts'
import { Badge } from '../parts/badge.tsx'
import type { ShapeKind } from '../parts/shape.tsx'

const shapes: Record<ResultWord, ShapeKind> = {
  detected: 'now',
  presumptive: 'soon',
  'not-detected': 'fine',
  unsuitable: 'idle',
  pending: 'busy',
}

/** A result by its word, its shape and its colour. */
export function WordBadge(props: { word: ResultWord }) {
  return <Badge shape={shapes[props.word]}>{resultWords[props.word]}</Badge>
}
