/**
 * What a page shows, as data. Layouts return marks, one writer draws them, tests measure them.
 * Lengths are PDF points (1/72 inch); the origin is the top left corner; ink is black or white
 * only, because label printers and fax machines turn grey into specks.
 */
import type { BarcodeSymbol } from './barcode.ts'

export type Face = 'regular' | 'bold' | 'mono'

export interface Point {
  readonly x: number
  readonly y: number
}

/** One line of text; `x, y` is the top left corner of its line box. */
export interface TextMark {
  readonly kind: 'text'
  readonly x: number
  readonly y: number
  readonly text: string
  readonly face: Face
  readonly size: number
  readonly ink: 'black' | 'white'
}

/** A closed outline, `filled` with black or drawn as a line `thick` points wide. */
export interface ShapeMark {
  readonly kind: 'shape'
  readonly points: readonly Point[]
  readonly thick: number | 'filled'
}

/** An open line through the points; a single point is a dot. */
export interface LineMark {
  readonly kind: 'line'
  readonly points: readonly Point[]
  readonly thick: number
}

/** A barcode with its quiet zones; drawn at the printer dot nearest to `x, y`. */
export interface BarcodeMark {
  readonly kind: 'barcode'
  readonly x: number
  readonly y: number
  readonly symbol: BarcodeSymbol
}

export type Mark = TextMark | ShapeMark | LineMark | BarcodeMark

export interface Page {
  readonly width: number
  readonly height: number
  readonly marks: readonly Mark[]
}

export const pointsPerMm = 72 / 25.4

export function mm(length: number): number {
  return length * pointsPerMm
}

export function textMark(
  x: number,
  y: number,
  text: string,
  face: Face,
  size: number,
  ink: TextMark['ink'] = 'black',
): TextMark {
  return { kind: 'text', x, y, text, face, size, ink }
}

export function ruleMark(x: number, y: number, width: number, thick = 0.5): LineMark {
  const points = [
    { x, y },
    { x: x + width, y },
  ]
  return { kind: 'line', points, thick }
}

export function boxMark(x: number, y: number, width: number, height: number, thick: number): Mark {
  const points = [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ]
  return { kind: 'shape', points, thick }
}

export function shifted(marks: readonly Mark[], dx: number, dy: number): Mark[] {
  return marks.map((mark) => {
    if (mark.kind === 'text' || mark.kind === 'barcode')
      return { ...mark, x: mark.x + dx, y: mark.y + dy }
    return { ...mark, points: mark.points.map(({ x, y }) => ({ x: x + dx, y: y + dy })) }
  })
}
