/** Label stocks that a station begins with: sizes that are sold everywhere. */
import type { Dpi, LabelStock, RollStock, StockName } from './label-stock.ts'

const usual = { marginMm: 1.2, coldC: null } as const

function roll(widthMm: number, heightMm: number, dpi: Dpi): RollStock {
  return { kind: 'roll', widthMm, heightMm, dpi, gapMm: 3, ...usual }
}

/** 300 dpi divides the dots of every office printer. */
const sheet = { kind: 'sheet', dpi: 300, ...usual } as const
const a4 = { paperWidthMm: 210, paperHeightMm: 297 } as const
const letter = { paperWidthMm: 215.9, paperHeightMm: 279.4 } as const

/** Sheets by columns and rows, rolls by inches: common practice, no source, but for the first. */
export const commonStocks = {
  /** 2 by 1 in, the specimen label size of CLSI AUTO12-A (2011). */
  'roll-51x25': roll(50.8, 25.4, 203),
  'roll-50.8x25.4-300': roll(50.8, 25.4, 300),
  'roll-57.2x31.8-203': roll(57.2, 31.8, 203),
  'roll-76.2x50.8-203': roll(76.2, 50.8, 203),
  'roll-101.6x50.8-203': roll(101.6, 50.8, 203),
  'sheet-a4': {
    ...sheet,
    ...a4,
    widthMm: 63.5,
    heightMm: 38.1,
    columns: 3,
    rows: 7,
    leftMm: 7.25,
    topMm: 15.15,
    stepAcrossMm: 66,
    stepDownMm: 38.1,
  },
  'sheet-letter': {
    ...sheet,
    ...letter,
    widthMm: 101.6,
    heightMm: 50.8,
    columns: 2,
    rows: 5,
    leftMm: 3.95,
    topMm: 12.7,
    stepAcrossMm: 106.4,
    stepDownMm: 50.8,
  },
  'sheet-99.1x67.7-on-210x297-300': {
    ...sheet,
    ...a4,
    widthMm: 99.1,
    heightMm: 67.7,
    columns: 2,
    rows: 4,
    leftMm: 4.65,
    topMm: 13.1,
    stepAcrossMm: 101.6,
    stepDownMm: 67.7,
  },
} satisfies Readonly<Record<StockName, LabelStock>>
