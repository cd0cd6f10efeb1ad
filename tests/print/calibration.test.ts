/** A calibration page shows how far a printer prints off its place, and an offset puts it right. */
import { describe, expect, test } from 'vitest'
import { dotSize } from '../../electron/print/barcode.ts'
import { calibrationMm, calibrationRun } from '../../electron/print/calibration.ts'
import { movedPages } from '../../electron/print/label-stock.ts'
import { mm, type Page } from '../../electron/print/mark.ts'
import { commonStocks } from '../../shared-types/common-stocks.ts'
import { overlaps, stickingOut } from './marks.ts'

const stocks = Object.entries(commonStocks)

/** The long lines of a roll's page: one across, one down. */
function longLines({ marks }: Page) {
  return marks.flatMap((mark) => (mark.kind === 'line' && mark.thick === 0.4 ? [mark] : []))
}

describe.each(stocks)('on %s', (_, stock) => {
  const run = calibrationRun(stock, 0)

  test('nothing sticks out of the paper, and no words lie over each other', () => {
    for (const page of run.pages) {
      expect(stickingOut(page)).toEqual([])
      expect(overlaps(page)).toEqual([])
    }
  })

  test('it is one page', () => {
    expect(run.pages).toHaveLength(1)
  })
})

test('its long lines lie exactly five millimetres from the edges of a label of the roll', () => {
  const [page] = calibrationRun(commonStocks['roll-51x25'], 0).pages
  if (!page) throw new Error('a page was asked for')
  const [across, down] = longLines(page)
  expect(across?.points.map(({ y }) => y)).toEqual([mm(calibrationMm), mm(calibrationMm)])
  expect(down?.points.map(({ x }) => x)).toEqual([mm(calibrationMm), mm(calibrationMm)])
})

test.each([203, 300, 600])('an offset moves everything by whole dots at %i dpi', (dpi) => {
  const { pages } = calibrationRun({ ...commonStocks['roll-51x25'], dpi: 203 }, 0)
  const [moved] = movedPages(pages, { rightMm: 1.03, downMm: -0.6 }, dpi)
  const [before, after] = [pages[0], moved].map((page) => {
    const mark = page?.marks.find(({ kind }) => kind === 'text')
    return mark?.kind === 'text' ? mark : { x: Number.NaN, y: Number.NaN }
  })
  const dots = [(after?.x ?? 0) - (before?.x ?? 0), (after?.y ?? 0) - (before?.y ?? 0)].map(
    (length) => length / dotSize(dpi),
  )
  expect(dots[0]).toBeCloseTo(Math.round((1.03 / 25.4) * dpi), 6)
  expect(dots[1]).toBeCloseTo(Math.round((-0.6 / 25.4) * dpi), 6)
  expect(movedPages(pages, { rightMm: 0, downMm: 0 }, dpi)).toBe(pages)
})
