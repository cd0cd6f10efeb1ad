/**
 * What a label is for, in a word and a shape, so that a glance, a glove or a black-and-white copy
 * cannot mix them up: LEFT is a filled arrow to the left, RIGHT an outlined arrow to the right,
 * OBEX an outline pointed at both ends, COOLER a plain box, KIT a filled box, CREW a filled one pointed
 * at both ends. Colour says nothing.
 */
import type { TissueSite } from '../../shared-types/tissue.ts'
import type { Block } from './flow.ts'
import { type Mark, type Point, textMark } from './mark.ts'
import { lineHeight, textWidth } from './ruler.ts'

export type MarkedThing = TissueSite | 'cooler' | 'kit' | 'badge'

interface Look {
  readonly word: string
  readonly filled: boolean
  /** Whether the shape comes to a point there. */
  readonly points: { readonly left: boolean; readonly right: boolean }
}

const looks: Record<MarkedThing, Look> = {
  left: { word: 'LEFT', filled: true, points: { left: true, right: false } },
  right: { word: 'RIGHT', filled: false, points: { left: false, right: true } },
  obex: { word: 'OBEX', filled: false, points: { left: true, right: true } },
  cooler: { word: 'COOLER', filled: false, points: { left: false, right: false } },
  kit: { word: 'KIT', filled: true, points: { left: false, right: false } },
  badge: { word: 'CREW', filled: true, points: { left: true, right: true } },
}

export interface SideMark extends Block {
  readonly width: number
}

function outline({ points }: Look, width: number, height: number): Point[] {
  const inLeft = points.left ? height / 2 : 0
  const inRight = width - (points.right ? height / 2 : 0)
  return [
    { x: 0, y: height / 2 },
    { x: inLeft, y: 0 },
    { x: inRight, y: 0 },
    { x: width, y: height / 2 },
    { x: inRight, y: height },
    { x: inLeft, y: height },
  ]
}

/** The mark with its word set in `size` points. */
export function sideMark(thing: MarkedThing, size: number): SideMark {
  const look = looks[thing]
  const height = lineHeight(size) * 1.1
  const word = textWidth(look.word, 'bold', size)
  const aside = { left: look.points.left ? 0.65 : 0.4, right: look.points.right ? 0.65 : 0.4 }
  const width = word + (aside.left + aside.right) * height
  const shape: Mark = {
    kind: 'shape',
    points: outline(look, width, height),
    thick: look.filled ? 'filled' : 1.2,
  }
  const y = (height - lineHeight(size)) / 2
  const ink = look.filled ? 'white' : 'black'
  const text = textMark(aside.left * height, y, look.word, 'bold', size, ink)
  return { width, height, marks: [shape, text] }
}
