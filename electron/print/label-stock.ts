/** Labels of a stock, and where each lies on the pages that its printer takes. */
import type { LabelStock, SheetStock } from '../../shared-types/label-stock.ts'
import { dotSize } from './barcode.ts'
import { type Mark, type Page, mm, shifted } from './mark.ts'

/** What one label offers a layout, in points. */
export interface LabelFrame {
  readonly width: number
  readonly height: number
  /** Kept free along each edge. */
  readonly margin: number
  readonly dpi: number
  /** Size of running text in points: 7 on the smallest labels, up to 9. */
  readonly type: number
}

export function labelFrame({ widthMm, heightMm, marginMm, dpi }: LabelStock): LabelFrame {
  const type = Math.min(9, Math.max(7, Math.floor(mm(heightMm) / 10)))
  return { width: mm(widthMm), height: mm(heightMm), margin: mm(marginMm), dpi, type }
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

/** How far a printer prints off its place, and by how much it is put right: to the right, and down. */
export interface PrinterOffset {
  readonly rightMm: number
  readonly downMm: number
}

/** The pages moved by whole printer dots, so that barcodes stay sharp. */
export function movedPages(
  pages: readonly Page[],
  { rightMm, downMm }: PrinterOffset,
  dpi: number,
): readonly Page[] {
  if (rightMm === 0 && downMm === 0) return pages
  const dot = dotSize(dpi)
  const [right, down] = [rightMm, downMm].map((length) => Math.round(mm(length) / dot) * dot)
  return pages.map((page) => ({ ...page, marks: shifted(page.marks, right ?? 0, down ?? 0) }))
}
