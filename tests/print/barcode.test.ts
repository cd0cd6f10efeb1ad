import { describe, expect, test } from 'vitest'
import {
  type BarcodeSymbol,
  code128Bars,
  code128Within,
  dataMatrixCells,
  dataMatrixWithin,
  dotSize,
  symbolSize,
} from '../../electron/print/barcode.ts'
import { mm } from '../../electron/print/mark.ts'
import { writePdf } from '../../electron/print/pdf-writer.ts'
import { bagNumber } from '../../shared-types/sample-number.ts'
import { drawnPages } from './read-pdf.ts'
import { desk } from './samples.ts'

const number = bagNumber(desk, 42, 'L')
const roll = { dpi: 203, width: mm(50.8), height: mm(8) }

function made(symbol: BarcodeSymbol | undefined): BarcodeSymbol {
  if (!symbol) throw new Error('the symbol does not fit')
  return symbol
}

function narrowest({ rects }: BarcodeSymbol): number {
  return Math.min(...rects.map(({ width }) => width))
}

describe('a barcode for a 203 dpi label printer', () => {
  const bars = made(code128Within(number, roll.dpi, roll.width, roll.height))
  const matrix = made(dataMatrixWithin(number, roll.dpi, mm(12)))

  test('is made of whole dots', () => {
    for (const { x, y, width, height } of [...bars.rects, ...matrix.rects])
      expect([x, y, width, height].every(Number.isInteger)).toBe(true)
  })

  test('never has a Code 128 bar of less than 2 dots, or a Data Matrix module of less than 3', () => {
    expect(narrowest(bars)).toBe(2)
    expect(narrowest(matrix)).toBe(3)
    expect(Math.min(...matrix.rects.map(({ height }) => height))).toBe(3)
  })

  test('keeps ten modules clear on each side of a Code 128 (GS1 General Specifications 5.4.4.2)', () => {
    expect(Math.min(...bars.rects.map(({ x }) => x))).toBe(20)
    expect(bars.width - Math.max(...bars.rects.map(({ x, width }) => x + width))).toBe(20)
  })

  test('keeps at least one module clear all around a Data Matrix (GS1 table 6)', () => {
    expect(Math.min(...matrix.rects.map(({ x }) => x))).toBeGreaterThanOrEqual(3)
    expect(Math.min(...matrix.rects.map(({ y }) => y))).toBeGreaterThanOrEqual(3)
    const right = Math.max(...matrix.rects.map(({ x, width }) => x + width))
    expect(matrix.width - right).toBeGreaterThanOrEqual(3)
  })

  test('fits a label two inches wide', () => {
    expect(symbolSize(bars).width).toBeLessThanOrEqual(mm(50.8))
  })

  test('is refused, not shrunk, one dot below the width it needs', () => {
    const needed = symbolSize(bars).width + dotSize(203)
    expect(code128Within(number, 203, needed, roll.height)).toBeDefined()
    expect(code128Within(number, 203, needed - dotSize(203) * 1.01, roll.height)).toBeUndefined()
    expect(dataMatrixWithin(number, 203, mm(5))).toBeUndefined()
  })
})

describe('a barcode for an office printer', () => {
  test('is as large as its place allows, up to 0.495 mm a module (GS1 table 6)', () => {
    const module = (width: number): number =>
      (narrowest(made(code128Within(number, 300, mm(width), mm(10)))) * 25.4) / 300
    expect(module(50.8)).toBeCloseTo(0.254, 3)
    expect(module(66)).toBeCloseTo(0.339, 3)
    expect(module(500)).toBeCloseTo(0.423, 3)
  })

  test('never has a module under 0.25 mm, or 0.375 mm for Data Matrix, whatever the resolution', () => {
    for (const dpi of [150, 203, 300, 600, 1200]) {
      const bars = made(code128Within(number, dpi, mm(300), mm(10)))
      const matrix = made(dataMatrixWithin(number, dpi, mm(50)))
      expect((narrowest(bars) * 25.4) / dpi).toBeGreaterThanOrEqual(0.25)
      expect((narrowest(matrix) * 25.4) / dpi).toBeGreaterThanOrEqual(0.375)
    }
  })
})

describe.each([203, 300, 600])('at %i dpi', (dpi) => {
  // In points at the printer's own resolution, as the PDF has them.
  const left = (symbol: BarcodeSymbol) => Math.min(...symbol.rects.map(({ x }) => x)) * dotSize(dpi)
  const right = (symbol: BarcodeSymbol) =>
    symbolSize(symbol).width -
    Math.max(...symbol.rects.map(({ x, width }) => x + width)) * dotSize(dpi)

  test('a Code 128 has ten modules clear on each side (ISO/IEC 15417, as GS1 5.4.4.2 has it)', () => {
    const symbol = made(code128Within(number, dpi, mm(60), mm(10)))
    const module = narrowest(symbol) * dotSize(dpi)
    expect(left(symbol)).toBeCloseTo(10 * module, 6)
    expect(right(symbol)).toBeCloseTo(10 * module, 6)
  })

  test('a Data Matrix has at least one module clear all around (ISO/IEC 16022, as GS1 table 6 has it)', () => {
    const symbol = made(dataMatrixWithin(number, dpi, mm(15)))
    const module = narrowest(symbol) * dotSize(dpi)
    const bottom = Math.max(...symbol.rects.map(({ y, height }) => y + height)) * dotSize(dpi)
    const top = Math.min(...symbol.rects.map(({ y }) => y)) * dotSize(dpi)
    for (const clear of [left(symbol), right(symbol), top, symbolSize(symbol).height - bottom])
      expect(clear).toBeGreaterThanOrEqual(module)
  })
})

describe('the rectangles', () => {
  test('of a Code 128 cover as many modules as its bars are wide', () => {
    const { widths, modules } = code128Bars(number)
    const dark = widths.filter((_, place) => place % 2 === 0).reduce((sum, each) => sum + each, 0)
    const symbol = made(code128Within(number, 203, roll.width, roll.height))
    expect(symbol.rects.reduce((sum, { width }) => sum + width, 0)).toBe(dark * 2)
    expect(symbol.width).toBe((modules + 20) * 2)
  })

  test('of a Data Matrix cover each dark module once and no light one', () => {
    const { cells } = dataMatrixCells(number)
    const symbol = made(dataMatrixWithin(number, 203, mm(12)))
    const painted = symbol.rects.reduce((sum, { width, height }) => sum + width * height, 0)
    expect(painted).toBe(cells.flat().filter(Boolean).length * 9)
  })
})

test('drawn anywhere on a page, a barcode burns whole dots and leaves the others white', async () => {
  const symbols = [
    made(code128Within(number, 203, roll.width, roll.height)),
    made(dataMatrixWithin(number, 203, mm(12))),
  ]
  for (const symbol of symbols)
    for (const off of [0, 0.1, 0.17, 0.29]) {
      const marks = [{ kind: 'barcode' as const, x: 3 + off, y: 5 + off, symbol }]
      const heading = { title: 'dots', madeAtMs: 0 }
      const pdf = await writePdf([{ width: 144, height: 72, marks }], heading)
      const [canvas] = await drawnPages(pdf, 203)
      const { data } = canvas?.getContext('2d').getImageData(0, 0, 406, 203) ?? { data: [] }
      const red = data.filter((_, place) => place % 4 === 0)
      const dots = symbol.rects.reduce((sum, { width, height }) => sum + width * height, 0)
      expect(red.filter((shade) => shade < 32)).toHaveLength(dots)
      expect(red.filter((shade) => shade > 223)).toHaveLength(406 * 203 - dots)
    }
})
