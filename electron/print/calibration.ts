/**
 * A calibration page: rulers in millimetres, and two lines that must lie exactly five millimetres from
 * the edges of the label. Read off where the edges really are, and the printer's offset is known.
 */
import { type LabelStock, stockWords } from '../../shared-types/label-stock.ts'
import { code128Within, symbolSize } from './barcode.ts'
import { type Block, stacked } from './flow.ts'
import type { LabelRun } from './label-run.ts'
import { labelPages } from './label-stock.ts'
import { boxMark, type LineMark, type Mark, mm, shifted, textMark } from './mark.ts'
import { paragraph } from './text-block.ts'

/** From the edges to the lines, in millimetres. */
export const calibrationMm = 5

function line(x1: number, y1: number, x2: number, y2: number, thick = 0.4): LineMark {
  const points = [
    { x: mm(x1), y: mm(y1) },
    { x: mm(x2), y: mm(y2) },
  ]
  return { kind: 'line', points, thick }
}

/** Every millimetre a tick, every fifth longer, every tenth with its number. */
function rulers(widthMm: number, heightMm: number): Mark[] {
  const at = calibrationMm
  const tick = (place: number) => (place % 10 === 0 ? 2.4 : place % 5 === 0 ? 1.7 : 1)
  const across = Array.from({ length: Math.floor(widthMm) - 1 }, (_, place) => place + 1)
  const down = Array.from({ length: Math.floor(heightMm) - 1 }, (_, place) => place + 1)
  return [
    line(0.5, at, widthMm - 0.5, at),
    line(at, 0.5, at, heightMm - 0.5),
    ...across.map((place) => line(place, at, place, at + tick(place), 0.25)),
    ...down.map((place) => line(at, place, at + tick(place), place, 0.25)),
    ...across
      .filter((place) => place % 10 === 0 && place < widthMm - 4)
      .map((place) => textMark(mm(place + 0.3), mm(at + 1.4), String(place), 'regular', 6)),
    ...down
      .filter((place) => place % 10 === 0)
      .map((place) => textMark(mm(at + 2.6), mm(place) - 3.5, String(place), 'regular', 6)),
  ]
}

function words(stock: LabelStock, width: number): Block {
  return stacked([
    paragraph(stockWords(stock), 'bold', 6, width),
    paragraph(`Both long lines must lie ${calibrationMm} mm from the edges.`, 'regular', 6, width),
  ])
}

/** One label with rulers, what to do, and bars of the narrowest module that is printed here. */
function rulerLabel(stock: LabelStock): Mark[] {
  const { widthMm, heightMm, dpi } = stock
  const left = mm(calibrationMm + 5.5)
  const top = mm(calibrationMm + 4.5)
  const told = words(stock, mm(widthMm - 1.5) - left)
  const bars = code128Within('5 MM', dpi, mm(widthMm - 1) - left, mm(5))
  const low = mm(heightMm - 1) - (bars ? symbolSize(bars).height : 0)
  return [
    ...rulers(widthMm, heightMm),
    ...shifted(told.marks, left, top),
    ...(bars && low > top + told.height
      ? [{ kind: 'barcode', x: left, y: low, symbol: bars } as const]
      : []),
  ]
}

/** The outline of a label, to see on a sheet whether all of them are met. */
function outline({ widthMm, heightMm }: LabelStock): Mark[] {
  return [boxMark(mm(0.3), mm(0.3), mm(widthMm - 0.6), mm(heightMm - 0.6), 0.3)]
}

/** The page: on a sheet, rulers on the first label and the last, and the outline of each. */
export function calibrationRun(stock: LabelStock, madeAtMs: number): LabelRun {
  const count = stock.kind === 'sheet' ? stock.columns * stock.rows : 1
  const marksAt = (place: number): Mark[] => {
    const ruler = place === 0 || place === count - 1 ? rulerLabel(stock) : []
    return stock.kind === 'sheet' ? [...outline(stock), ...ruler] : ruler
  }
  const labels = Array.from({ length: count }, (_, place) => ({
    wish: place,
    words: 'calibration',
    place: 0,
    of: 1,
    marks: marksAt(place),
  }))
  const pages = labelPages(
    labels.map(({ marks }) => marks),
    stock,
  )
  const heading = { title: `Calibration, ${stockWords(stock)}`, madeAtMs }
  return { stock, labels, pages, blanks: count, heading }
}
