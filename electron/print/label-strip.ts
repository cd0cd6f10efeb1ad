/**
 * Data card and hunter's stub hold more than one small label can show legibly, so they are printed
 * as a strip: as many labels of the stock as the text needs, each with its title and its place in
 * the strip, stuck one under the other on the kit's card. The first one carries the Code 128.
 */
import type { SampleNumber } from '../../shared-types/sample-number.ts'
import { code128Within, symbolSize } from './barcode.ts'
import { type Block, beside, filledPages, gap, stacked } from './flow.ts'
import type { LabelFrame } from './label-stock.ts'
import { type Mark, mm, shifted, textMark } from './mark.ts'
import { lineHeight, textWidth } from './ruler.ts'
import { paragraph } from './text-block.ts'

export interface LabelStrip {
  /** What the Code 128 carries. */
  readonly number: SampleNumber
  /** On top of each label, in bold. */
  readonly title: string
  /** One word for the top right corner, such as `Card`. */
  readonly word: string
  /** Stands under the barcode. */
  readonly caption: string
  /** Under the caption, in bold, such as `REPRINT 1`. */
  readonly notes: readonly string[]
  readonly rows: readonly Block[]
}

/** 15% of the length of a Code 128 of twelve characters at the least module (common practice, no source). */
const barHeight = mm(6.5)

function barcodeBlock(strip: LabelStrip, width: number, frame: LabelFrame): Block | undefined {
  const symbol = code128Within(strip.number, frame.dpi, frame.width, barHeight)
  if (!symbol) return undefined
  const { width: across } = symbolSize(symbol)
  const bars: Block = {
    height: barHeight,
    marks: [{ kind: 'barcode', x: (width - across) / 2, y: 0, symbol }],
  }
  return stacked([
    gap(1.5),
    bars,
    paragraph(strip.caption, 'regular', frame.type, width),
    ...strip.notes.map((note) => paragraph(note, 'bold', frame.type, width)),
    gap(1),
  ])
}

function stripHead(strip: LabelStrip, place: string, width: number, type: number): Block {
  const number = paragraph(strip.title, 'bold', type + 2, width)
  const words = `${strip.word} ${place}`
  const x = width - textWidth(words, 'regular', type)
  const y = lineHeight(type + 2) - lineHeight(type)
  const corner: Block = { height: 0, marks: [textMark(0, y, words, 'regular', type)] }
  return beside([
    { x: 0, block: number },
    { x, block: corner },
  ])
}

function headFits(strip: LabelStrip, width: number, type: number): boolean {
  const needed = textWidth(strip.title, 'bold', type + 2) + type
  return needed + textWidth(`${strip.word} 9/9`, 'regular', type) <= width
}

/** The marks of each label of the strip; undefined when the stock is too small. */
export function stripMarks(strip: LabelStrip, frame: LabelFrame): Mark[][] | undefined {
  const width = frame.width - 2 * frame.margin
  const top = frame.margin + lineHeight(frame.type + 2)
  const first = barcodeBlock(strip, width, frame)
  if (!first || !headFits(strip, width, frame.type)) return undefined
  const rows = [first, ...strip.rows]
  const pages = filledPages([{ rows }], frame.height - frame.margin - top)
  return pages?.map(({ marks }, place) => {
    const head = stripHead(strip, `${place + 1}/${pages.length}`, width, frame.type)
    return [
      ...shifted(head.marks, frame.margin, frame.margin),
      ...shifted(marks, frame.margin, top),
    ]
  })
}
