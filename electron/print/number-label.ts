/**
 * The label of a bag, a kit, a cooler or a badge. None carries a hunter's name, telephone number or id,
 * and only a badge the name of who wears it: the other things leave the station. Fixed places, the number at the top left (CLSI AUTO12-A 2011):
 *
 *   number                    +------+
 *   < LEFT |  FRESH           | data |
 *             REPRINT 1       |matrix|
 *   species, date             +------+
 *   station
 *   ||| || |||| Code 128, where it fits || |||
 */
import { type SampleNumber, grouped } from '../../shared-types/sample-number.ts'
import { type BarcodeSymbol, code128Within, dataMatrixWithin, symbolSize } from './barcode.ts'
import { type Block, beside, gap, stacked } from './flow.ts'
import { type LabelBatch, stationWords } from './label-run.ts'
import type { LabelFrame } from './label-stock.ts'
import { type Face, type Mark, mm, ruleMark, shifted, textMark } from './mark.ts'
import { lineHeight, textWidth } from './ruler.ts'
import { type MarkedThing, type SideMark, sideMark } from './side-mark.ts'
import { paragraph } from './text-block.ts'

export interface NumberLabel {
  readonly number: SampleNumber
  readonly thing: MarkedThing
  /** Beside the mark, one under the other, in bold. */
  readonly notes: readonly string[]
  /** Under the mark, each wrapped as it needs. */
  readonly lines: readonly LabelLine[]
}

/** Words, or captions with room to write after each. */
export type LabelLine =
  | { readonly text: string; readonly face: Face }
  | { readonly write: readonly string[] }

/** What it is and when, then where: in bold where it is only practice. */
export function numberLabelLines(what: string | LabelLine, batch: LabelBatch): LabelLine[] {
  return [
    typeof what === 'string' ? { text: what, face: 'regular' } : what,
    { text: stationWords(batch), face: batch.practice ? 'bold' : 'regular' },
  ]
}

/** Large enough for a ball-point pen in a cold hand (common practice, no source). */
const writingHeight = mm(5.5)

function writingRow(captions: readonly string[], width: number, size: number): Block {
  const share = width / captions.length
  const base = writingHeight - 1.5
  return beside(
    captions.map((caption, place) => {
      const start = textWidth(caption, 'regular', size) + 2
      const marks = [
        textMark(0, base - lineHeight(size), caption, 'regular', size),
        ruleMark(start, base - 0.5, share - start - 4),
      ]
      return { x: place * share, block: { height: writingHeight, marks } }
    }),
  )
}

function lineBlock(line: LabelLine, width: number, type: number): Block {
  if ('write' in line) return writingRow(line.write, width, type)
  return paragraph(line.text, line.face, type, width)
}

const numberSizes = [20, 18, 16, 14, 13, 12, 11, 10]
const spacing = 2

/** Mark and notes in a row. */
function markRow({ thing, notes }: NumberLabel, size: number, type: number): SideMark {
  const mark = sideMark(thing, size)
  const x = mark.width + 3
  const line = lineHeight(type)
  const words = notes.map((note, place) => textMark(x, place * line, note, 'bold', type))
  return {
    width: x + Math.max(0, ...notes.map((note) => textWidth(note, 'bold', type))),
    height: Math.max(mark.height, notes.length * line),
    marks: [...mark.marks, ...words],
  }
}

/** Part and check character are measured at their widest, so that all labels of a kit look alike. */
function numberSize(number: string, room: number): number | undefined {
  const widest = `${number.slice(0, -3)}W-W`
  return numberSizes.find((size) => textWidth(widest, 'bold', size) <= room)
}

/** Number and mark, left of the Data Matrix; undefined when they do not fit beside it. */
function headBlock(
  label: NumberLabel,
  width: number,
  { dpi, type }: LabelFrame,
): Block | undefined {
  const matrix = dataMatrixWithin(label.number, dpi, mm(12))
  if (!matrix) return undefined
  const square = symbolSize(matrix)
  const room = width - square.width - spacing
  const number = grouped(label.number)
  const size = numberSize(number, room)
  if (size === undefined) return undefined
  const row = markRow(label, size * 0.8, type)
  if (row.width > room) return undefined
  const words = stacked([paragraph(number, 'bold', size, room), row])
  return {
    height: Math.max(words.height, square.height),
    marks: [...words.marks, { kind: 'barcode', x: width - square.width, y: 0, symbol: matrix }],
  }
}

/** Shorter, and a hand scanner held at a slant misses bars (common practice, no source). */
const leastBarHeight = mm(5)
/** GS1 General Specifications table 6, regulated healthcare, non-retail. */
const mostBarHeight = mm(12.7)

function bottomBars(number: SampleNumber, room: number, frame: LabelFrame): Mark[] {
  if (room < leastBarHeight) return []
  const symbol = code128Within(number, frame.dpi, frame.width, Math.min(room, mostBarHeight))
  return symbol ? [atBottom(symbol, frame)] : []
}

function atBottom(symbol: BarcodeSymbol, frame: LabelFrame): Mark {
  const { width, height } = symbolSize(symbol)
  const y = frame.height - frame.margin - height
  return { kind: 'barcode', x: (frame.width - width) / 2, y, symbol }
}

/** The marks of the label; undefined when the stock is too small for them. */
export function numberLabelMarks(label: NumberLabel, frame: LabelFrame): Mark[] | undefined {
  const width = frame.width - 2 * frame.margin
  const height = frame.height - 2 * frame.margin
  const head = headBlock(label, width, frame)
  if (!head) return undefined
  const lines = label.lines.map((line) => lineBlock(line, width, frame.type))
  const words = stacked([head, gap(spacing / 2), ...lines, gap(spacing / 2)])
  if (words.height > height) return undefined
  return [
    ...shifted(words.marks, frame.margin, frame.margin),
    ...bottomBars(label.number, height - words.height, frame),
  ]
}
