/**
 * Code 128 (ISO/IEC 15417) and Data Matrix (ISO/IEC 16022) as rectangles of whole printer dots.
 *
 * A PDF renderer paints every dot a shape touches, so a bar whose edge lies between two dots grows
 * by one and the symbol stops scanning. Hence: modules are whole dots, the symbol starts on a dot,
 * and each rectangle is drawn a hair smaller than it is.
 */
import bwipjs from 'bwip-js/node'

/** Widths in modules, bar and space in turn, starting and ending with a bar. */
export interface LinearGeometry {
  readonly widths: readonly number[]
  readonly modules: number
}

/** `cells[row][column]`: whether that module is dark. Square, without a quiet zone. */
export interface MatrixGeometry {
  readonly cells: readonly (readonly boolean[])[]
}

/** In whole dots from the top left corner of the symbol, quiet zone included. */
export interface DotRect {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

export interface BarcodeSymbol {
  readonly text: string
  readonly dpi: number
  /** Whole dots, quiet zones included. */
  readonly width: number
  readonly height: number
  readonly rects: readonly DotRect[]
}

/**
 * Narrowest module that still reads when a 203 dpi printer gets everything else wrong, and the
 * widest of GS1 General Specifications table 6 (regulated healthcare, non-retail), in mm.
 */
const code128ModuleMm = { least: 0.25, most: 0.495 }
const dataMatrixModuleMm = { least: 0.375, most: 0.495 }

/** ISO/IEC 15417, as GS1 General Specifications 5.4.4.2 has it: ten modules on each side. */
const code128Quiet = 10
/** ISO/IEC 16022, as GS1 table 6 has it, asks for one module on all four sides; a second one forgives a worn print head. */
const dataMatrixQuiet = 2

/** Taken off each edge of a rectangle, in dots. */
const inset = 0.02

/** Size of one printer dot in points. */
export function dotSize(dpi: number): number {
  return 72 / dpi
}

/** The bars of `text`, which holds ASCII characters. Throws on others. */
export function code128Bars(text: string): LinearGeometry {
  const [symbol] = bwipjs.raw('code128', text, {})
  if (!symbol || !('sbs' in symbol)) throw new Error(`no Code 128 for ${text}`)
  const widths = [...symbol.sbs]
  return { widths, modules: widths.reduce((sum, width) => sum + width, 0) }
}

/** The modules of `text`, error correction ECC 200. Throws when it is too long for a symbol. */
export function dataMatrixCells(text: string): MatrixGeometry {
  const [symbol] = bwipjs.raw('datamatrix', text, {})
  if (!symbol || !('pixs' in symbol)) throw new Error(`no Data Matrix for ${text}`)
  const { pixs, pixx, pixy } = symbol
  const row = (y: number): boolean[] =>
    Array.from(pixs.slice(y * pixx, (y + 1) * pixx), (pixel) => pixel === 1)
  return { cells: Array.from({ length: pixy }, (_, y) => row(y)) }
}

/** The most dots a module may have within `room` dots; undefined when the least is too many. */
function moduleDots(
  modules: number,
  room: number,
  dpi: number,
  limit: { least: number; most: number },
): number | undefined {
  const least = Math.ceil((limit.least * dpi) / 25.4)
  const most = Math.max(least, Math.floor((limit.most * dpi) / 25.4))
  const fitting = Math.min(most, Math.floor(room / modules))
  return fitting < least ? undefined : fitting
}

/** Whole dots within a length in points, one dot kept back for snapping to the dot grid. */
function roomFor(length: number, dpi: number): number {
  return Math.floor(length / dotSize(dpi)) - 1
}

function barRects(widths: readonly number[], module: number, height: number): DotRect[] {
  let x = code128Quiet * module
  return widths.flatMap((modules, place) => {
    const bar = { x, y: 0, width: modules * module, height }
    x += bar.width
    return place % 2 === 0 ? [bar] : []
  })
}

/** Code 128 with its quiet zones within `width` by `height` points; undefined when too narrow. */
export function code128Within(
  text: string,
  dpi: number,
  width: number,
  height: number,
): BarcodeSymbol | undefined {
  const { widths, modules } = code128Bars(text)
  const across = modules + 2 * code128Quiet
  const module = moduleDots(across, roomFor(width, dpi), dpi, code128ModuleMm)
  const tall = roomFor(height, dpi)
  if (module === undefined || tall < 1) return undefined
  return { text, dpi, width: across * module, height: tall, rects: barRects(widths, module, tall) }
}

/** Neighbours in a row are one rectangle: fewer edges that can go wrong. */
function rowRects(cells: readonly boolean[], row: number, module: number): DotRect[] {
  const rects: DotRect[] = []
  let start = 0
  cells.forEach((dark, column) => {
    if (!dark) start = column + 1
    else if (!cells[column + 1])
      rects.push({
        x: (start + dataMatrixQuiet) * module,
        y: (row + dataMatrixQuiet) * module,
        width: (column + 1 - start) * module,
        height: module,
      })
  })
  return rects
}

/** Data Matrix with its quiet zone in a square of `side` points; undefined when too small. */
export function dataMatrixWithin(
  text: string,
  dpi: number,
  side: number,
): BarcodeSymbol | undefined {
  const { cells } = dataMatrixCells(text)
  const across = cells.length + 2 * dataMatrixQuiet
  const module = moduleDots(across, roomFor(side, dpi), dpi, dataMatrixModuleMm)
  if (module === undefined) return undefined
  const rects = cells.flatMap((row, y) => rowRects(row, y, module))
  return { text, dpi, width: across * module, height: across * module, rects }
}

/** Width and height of a symbol in points, quiet zones included. */
export function symbolSize(symbol: BarcodeSymbol): { width: number; height: number } {
  const dot = dotSize(symbol.dpi)
  return { width: symbol.width * dot, height: symbol.height * dot }
}

/** Draws the symbol as filled rectangles, its corner at the printer dot nearest to `x, y` (points). */
export function drawBarcode(
  doc: PDFKit.PDFDocument,
  symbol: BarcodeSymbol,
  x: number,
  y: number,
): void {
  const dot = dotSize(symbol.dpi)
  const [left, top] = [Math.round(x / dot), Math.round(y / dot)]
  for (const rect of symbol.rects)
    doc.rect(
      (left + rect.x + inset) * dot,
      (top + rect.y + inset) * dot,
      (rect.width - 2 * inset) * dot,
      (rect.height - 2 * inset) * dot,
    )
  doc.fill('black')
}
