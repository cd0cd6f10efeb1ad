/** Label stock, described by its measurements and by nothing else. Lengths in millimetres. */
import type { StockName } from '../../shared-types/label.ts'
import { dotSize } from './barcode.ts'
import { type Mark, type Page, mm, shifted } from './mark.ts'

interface LabelSize {
  /** As the person at the printer would say it. */
  readonly name: string
  readonly widthMm: number
  readonly heightMm: number
  /** Printer dots an inch; barcodes are built from whole dots. */
  readonly dpi: number
}

/** One label a page. */
export interface RollStock extends LabelSize {
  readonly kind: 'roll'
}

/** A sheet of equal labels in rows and columns. */
export interface SheetStock extends LabelSize {
  readonly kind: 'sheet'
  readonly paperWidthMm: number
  readonly paperHeightMm: number
  readonly columns: number
  readonly rows: number
  /** From the edge of the paper to the first label. */
  readonly leftMm: number
  readonly topMm: number
  /** From the edge of one label to the same edge of the next. */
  readonly stepAcrossMm: number
  readonly stepDownMm: number
}

export type LabelStock = RollStock | SheetStock

/** 2 by 1 in, the specimen label size of CLSI AUTO12-A (2011), on a 203 dpi label printer. */
const rollOfSmallLabels: RollStock = {
  kind: 'roll',
  name: 'roll, 50.8 x 25.4 mm',
  widthMm: 50.8,
  heightMm: 25.4,
  dpi: 203,
}

/** 3 by 7 on A4 (common practice, no source); 300 dpi divides the dots of every office printer. */
const sheetA4: SheetStock = {
  kind: 'sheet',
  name: 'A4 sheet, 21 labels of 63.5 x 38.1 mm',
  widthMm: 63.5,
  heightMm: 38.1,
  dpi: 300,
  paperWidthMm: 210,
  paperHeightMm: 297,
  columns: 3,
  rows: 7,
  leftMm: 7.25,
  topMm: 15.15,
  stepAcrossMm: 66,
  stepDownMm: 38.1,
}

/** 2 by 5 on US Letter, 4 by 2 in each (common practice, no source). */
const sheetLetter: SheetStock = {
  kind: 'sheet',
  name: 'US Letter sheet, 10 labels of 101.6 x 50.8 mm',
  widthMm: 101.6,
  heightMm: 50.8,
  dpi: 300,
  paperWidthMm: 215.9,
  paperHeightMm: 279.4,
  columns: 2,
  rows: 5,
  leftMm: 3.95,
  topMm: 12.7,
  stepAcrossMm: 106.4,
  stepDownMm: 50.8,
}

/** By name, from the smallest label to the largest. */
export const labelStocks: Readonly<Record<StockName, LabelStock>> = {
  'roll-51x25': rollOfSmallLabels,
  'sheet-a4': sheetA4,
  'sheet-letter': sheetLetter,
}

/** What one label offers a layout, in points. */
export interface LabelFrame {
  readonly width: number
  readonly height: number
  /** Kept free along each edge: rolls creep and die cuts wander by about a millimetre. */
  readonly margin: number
  readonly dpi: number
  /** Size of running text in points: 7 on the smallest labels, up to 9. */
  readonly type: number
}

export function labelFrame({ widthMm, heightMm, dpi }: LabelStock): LabelFrame {
  const type = Math.min(9, Math.max(7, Math.floor(mm(heightMm) / 10)))
  return { width: mm(widthMm), height: mm(heightMm), margin: mm(1.2), dpi, type }
}

/** Where the label in this place lies on its sheet, on the printer's dot grid, in points. */
function placeOnSheet(stock: SheetStock, place: number): { x: number; y: number } {
  const dot = dotSize(stock.dpi)
  const snapped = (lengthMm: number): number => Math.round(mm(lengthMm) / dot) * dot
  return {
    x: snapped(stock.leftMm + (place % stock.columns) * stock.stepAcrossMm),
    y: snapped(stock.topMm + Math.floor(place / stock.columns) * stock.stepDownMm),
  }
}

function sheetPages(labels: readonly (readonly Mark[])[], stock: SheetStock): Page[] {
  const perSheet = stock.columns * stock.rows
  const sheets = Math.ceil(labels.length / perSheet)
  return Array.from({ length: sheets }, (_, sheet) => ({
    width: mm(stock.paperWidthMm),
    height: mm(stock.paperHeightMm),
    marks: labels.slice(sheet * perSheet, (sheet + 1) * perSheet).flatMap((marks, place) => {
      const { x, y } = placeOnSheet(stock, place)
      return shifted(marks, x, y)
    }),
  }))
}

/** The labels on the pages that the stock's printer takes. */
export function labelPages(labels: readonly (readonly Mark[])[], stock: LabelStock): Page[] {
  if (stock.kind === 'sheet') return sheetPages(labels, stock)
  return labels.map((marks) => ({ width: mm(stock.widthMm), height: mm(stock.heightMm), marks }))
}
