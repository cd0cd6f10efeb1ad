/**
 * Label stock, described by its measurements and by nothing else. Lengths are millimetres.
 * A stock is known by its size, so that two desks that describe the same one mean the same one.
 */
import { z } from 'zod'
import { type Result, granted, refused } from './result.ts'

/** A stock by its size, such as `roll-76.2x50.8-203`; the first three were named before sizes were. */
export const StockName = z.string().regex(/^(?:roll|sheet)-[a-z0-9.-]{1,60}$/)
export type StockName = z.infer<typeof StockName>

/** Dots an inch of the printers that labels are printed on; barcodes are built from whole dots. */
export const Dpi = z.literal([203, 300, 600])
export type Dpi = z.infer<typeof Dpi>

const measures = {
  widthMm: z.number().min(10).max(300),
  heightMm: z.number().min(8).max(300),
  /** Kept free along each edge: rolls creep and die cuts wander by about a millimetre. */
  marginMm: z.number().min(0).max(10),
  dpi: Dpi,
  /** The coldest that its maker says it holds at, in degrees Celsius; null where nobody has said. */
  coldC: z.int().min(-200).max(30).nullable(),
}

/** One label after another. */
export const RollStock = z.strictObject({
  kind: z.literal('roll'),
  ...measures,
  /** Between the end of one label and the start of the next. */
  gapMm: z.number().min(0).max(30),
})
export type RollStock = z.infer<typeof RollStock>

/** A sheet of equal labels in rows and columns. */
export const SheetStock = z.strictObject({
  kind: z.literal('sheet'),
  ...measures,
  paperWidthMm: z.number().min(50).max(460),
  paperHeightMm: z.number().min(50).max(660),
  columns: z.int().min(1).max(20),
  rows: z.int().min(1).max(50),
  /** From the edge of the paper to the first label. */
  leftMm: z.number().min(0).max(200),
  topMm: z.number().min(0).max(200),
  /** From the edge of one label to the same edge of the next: its pitch. */
  stepAcrossMm: z.number().min(0).max(460),
  stepDownMm: z.number().min(0).max(660),
})
export type SheetStock = z.infer<typeof SheetStock>

export const LabelStock = z.discriminatedUnion('kind', [RollStock, SheetStock])
export type LabelStock = z.infer<typeof LabelStock>

export const StockDescribed = z.strictObject({ name: StockName, stock: LabelStock })
/** No longer used here; what was printed on it keeps its name. */
export const StockRetired = StockDescribed

const paperNames = [
  { name: 'A4', width: 210, height: 297 },
  { name: 'US Letter', width: 215.9, height: 279.4 },
] as const

function paperWords({ paperWidthMm, paperHeightMm }: SheetStock): string {
  const known = paperNames.find(
    ({ width, height }) => width === paperWidthMm && height === paperHeightMm,
  )
  return known?.name ?? `${paperWidthMm} × ${paperHeightMm} mm`
}

/** As the person at the printer would say it. */
export function stockWords(stock: LabelStock): string {
  const size = `${stock.widthMm} × ${stock.heightMm} mm, ${stock.dpi} dpi`
  if (stock.kind === 'roll') return `roll, ${size}`
  return `${paperWords(stock)} sheet, ${stock.columns * stock.rows} labels of ${size}`
}

/** The name of a stock, from the measurements that tell it from another. */
export function stockNameOf(stock: LabelStock): StockName {
  const size = `${stock.widthMm}x${stock.heightMm}`
  if (stock.kind === 'roll') return `roll-${size}-${stock.dpi}`
  return `sheet-${size}-on-${stock.paperWidthMm}x${stock.paperHeightMm}-${stock.dpi}`
}

function impossible(field: string, say: string, next: string): Result<never> {
  return refused('stock-impossible', say, next, field)
}

/** Half a dot of the coarsest printer: sums of measured lengths are never exact. */
const slackMm = 0.05

function checkSheet(stock: SheetStock): Result<null> {
  const { columns, rows, leftMm, topMm, stepAcrossMm, stepDownMm } = stock
  if (columns > 1 && stepAcrossMm + slackMm < stock.widthMm)
    return impossible(
      'stepAcrossMm',
      `Labels ${stock.widthMm} mm wide cannot stand ${stepAcrossMm} mm apart: they would lie on each other.`,
      'Measure from the left edge of one label to the left edge of the next.',
    )
  if (rows > 1 && stepDownMm + slackMm < stock.heightMm)
    return impossible(
      'stepDownMm',
      `Labels ${stock.heightMm} mm high cannot stand ${stepDownMm} mm apart: they would lie on each other.`,
      'Measure from the top edge of one label to the top edge of the next.',
    )
  const right = leftMm + (columns - 1) * stepAcrossMm + stock.widthMm
  if (right > stock.paperWidthMm + slackMm)
    return impossible(
      'columns',
      `${columns} labels across need ${right.toFixed(1)} mm, and the paper is ${stock.paperWidthMm} mm wide.`,
      'Measure the paper, the left margin and the labels again.',
    )
  const bottom = topMm + (rows - 1) * stepDownMm + stock.heightMm
  if (bottom > stock.paperHeightMm + slackMm)
    return impossible(
      'rows',
      `${rows} labels down need ${bottom.toFixed(1)} mm, and the paper is ${stock.paperHeightMm} mm high.`,
      'Measure the paper, the top margin and the labels again.',
    )
  return granted(null)
}

/** Whether such a stock can exist. Refuses `stock-impossible`, naming the measurement. */
export function checkStock(stock: LabelStock): Result<null> {
  const free = Math.min(stock.widthMm, stock.heightMm) - 2 * stock.marginMm
  if (free < 5)
    return impossible(
      'marginMm',
      `Margins of ${stock.marginMm} mm leave ${Math.max(0, free).toFixed(1)} mm of the label to print on.`,
      'Give a smaller margin or a larger label.',
    )
  return stock.kind === 'sheet' ? checkSheet(stock) : granted(null)
}
