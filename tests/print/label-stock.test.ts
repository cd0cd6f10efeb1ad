import { describe, expect, test } from 'vitest'
import { dotSize } from '../../electron/print/barcode.ts'
import { labelFrame, labelPages } from '../../electron/print/label-stock.ts'
import { commonStocks } from '../../shared-types/common-stocks.ts'
import { mm, textMark } from '../../electron/print/mark.ts'

const corner = [textMark(0, 0, 'corner', 'regular', 7)]

function corners(stock: keyof typeof commonStocks, count: number) {
  const labels = Array.from({ length: count }, () => corner)
  return labelPages(labels, commonStocks[stock]).map(({ marks }) =>
    marks.map((mark) => (mark.kind === 'text' ? { x: mark.x, y: mark.y } : { x: NaN, y: NaN })),
  )
}

test('the roll gives one label a page, 2 by 1 in (CLSI AUTO12-A 2011), 406 by 203 dots', () => {
  const [page] = labelPages([corner], commonStocks['roll-51x25'])
  const dot = dotSize(203)
  expect((page?.width ?? 0) / dot).toBeCloseTo(406, 6)
  expect((page?.height ?? 0) / dot).toBeCloseTo(203, 6)
})

describe.each(['sheet-a4', 'sheet-letter'] as const)('the %s', (name) => {
  const stock = commonStocks[name]
  if (stock.kind !== 'sheet') throw new Error('not a sheet')
  const perSheet = stock.columns * stock.rows

  test('starts a new sheet when one is full', () => {
    expect(corners(name, perSheet)).toHaveLength(1)
    expect(corners(name, perSheet + 1).map((page) => page.length)).toEqual([perSheet, 1])
  })

  test('keeps every label on the paper', () => {
    for (const { x, y } of corners(name, perSheet).flat()) {
      expect(x).toBeGreaterThan(0)
      expect(y).toBeGreaterThan(0)
      expect(x + mm(stock.widthMm)).toBeLessThan(mm(stock.paperWidthMm))
      expect(y + mm(stock.heightMm)).toBeLessThan(mm(stock.paperHeightMm))
    }
  })

  test('leaves no label on top of another', () => {
    expect(stock.stepAcrossMm).toBeGreaterThanOrEqual(stock.widthMm)
    expect(stock.stepDownMm).toBeGreaterThanOrEqual(stock.heightMm)
    expect(new Set(corners(name, perSheet)[0]?.map(({ x, y }) => `${x} ${y}`)).size).toBe(perSheet)
  })

  test('starts every label on a printer dot, so that barcodes stay sharp', () => {
    for (const { x, y } of corners(name, perSheet).flat()) {
      expect(x / dotSize(stock.dpi)).toBeCloseTo(Math.round(x / dotSize(stock.dpi)), 6)
      expect(y / dotSize(stock.dpi)).toBeCloseTo(Math.round(y / dotSize(stock.dpi)), 6)
    }
  })
})

test('no label is set in less than 7 points', () => {
  for (const stock of Object.values(commonStocks)) expect(labelFrame(stock).type).toBeGreaterThan(6)
})
