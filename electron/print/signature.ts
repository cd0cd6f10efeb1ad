/** Signatures: drawn on the screen, given by PIN, or a line to sign on paper. */
import { type Block, gap, stacked } from './flow.ts'
import { type Mark, type Point, ruleMark, textMark } from './mark.ts'
import { lineHeight, textWidth } from './ruler.ts'
import { paragraph } from './text-block.ts'

/** Strokes of points, both axes 0 to 1 from the top left of a field three times as wide as high. */
export type SignatureStrokes = readonly (readonly Point[])[]

export interface SignedBy {
  /** Empty where it is to be written by hand. */
  readonly name: string
  /** Local date and time with its zone; empty where it is to be written by hand. */
  readonly at: string
  readonly hand:
    | { readonly how: 'drawn'; readonly strokes: SignatureStrokes }
    | { readonly how: 'pin' }
    | { readonly how: 'on-paper' }
    /** On another paper, which is named. */
    | { readonly how: 'elsewhere'; readonly words: string }
}

const type = 10
/** Width of the field over its height, as the strokes were drawn. */
const aspect = 3

function within(value: number): number {
  return Math.min(1, Math.max(0, value))
}

/** The strokes scaled to a field `width` points wide; what was drawn outside it ends at its edge. */
function strokeMarks(strokes: SignatureStrokes, width: number): Mark[] {
  const height = width / aspect
  return strokes.map((stroke) => ({
    kind: 'line',
    points: stroke.map(({ x, y }) => ({ x: within(x) * width, y: within(y) * height })),
    thick: 1,
  }))
}

/** The field with what was drawn, or what stands for it, over a line. */
export function signatureField({ hand }: SignedBy, width: number): Block {
  const height = width / aspect
  const rule = ruleMark(0, height, width, 0.75)
  if (hand.how === 'drawn')
    return { height: height + 2, marks: [...strokeMarks(hand.strokes, width), rule] }
  const words =
    hand.how === 'elsewhere'
      ? hand.words
      : hand.how === 'pin'
        ? 'signed with PIN at the desk'
        : 'sign here'
  const y = height - lineHeight(type) - 1
  return { height: height + 2, marks: [textMark(0, y, words, 'regular', type), rule] }
}

/** A caption and what is known, or a line to write it on. */
export function writtenLine(caption: string, value: string, width: number): Block {
  if (value !== '') return paragraph(`${caption}: ${value}`, 'regular', type, width)
  const x = textWidth(`${caption}: `, 'regular', type)
  const height = lineHeight(type) + 8
  return {
    height,
    marks: [
      textMark(0, height - lineHeight(type) - 1, `${caption}:`, 'regular', type),
      ruleMark(x, height - 2, width - x),
    ],
  }
}

/** Who signed as what, and when. */
export function signatureBlock(role: string, signed: SignedBy, width: number): Block {
  return stacked([
    paragraph(role, 'bold', type, width),
    signatureField(signed, width),
    gap(2),
    writtenLine('Name', signed.name, width),
    writtenLine('When', signed.at, width),
  ])
}
