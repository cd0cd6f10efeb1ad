/** The table of label stocks, and printing on what is in it. */
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import type { Printers } from '../../electron/print/printers.ts'
import { commonStocks } from '../../shared-types/common-stocks.ts'
import type { LabelStock } from '../../shared-types/label-stock.ts'
import { granted } from '../../shared-types/result.ts'
import { type Crew, openStation, type TestDesk } from '../support/desk.ts'

let desk: TestDesk
let crew: Crew
beforeAll(async () => {
  ;({ desk, crew } = await openStation())
})
beforeEach(() => desk.sit(crew.volunteer))
afterAll(() => desk.end())

const small = commonStocks['roll-51x25']
const sheet = commonStocks['sheet-a4']
const table = async () => (await desk.ask('stocks', {})).stocks
const named = async (name: string) => (await table()).find((each) => each.name === name)

describe('the table of label stocks', () => {
  test('begins with the sizes that are sold everywhere, each named by its size', async () => {
    const words = (await table()).map((each) => each.words)
    expect(words).toContain('roll, 50.8 × 25.4 mm, 203 dpi')
    expect(words).toContain('A4 sheet, 21 labels of 63.5 × 38.1 mm, 300 dpi')
    expect(words).toContain('US Letter sheet, 10 labels of 101.6 × 50.8 mm, 300 dpi')
    expect(new Set(words).size).toBe(words.length)
  })

  test('says how many labels of a stock one kit takes', async () => {
    const { labels } = await desk.ask('kits', {})
    const stocks = await table()
    for (const { name, kitLabels } of stocks.filter((each) => each.kitLabels !== null)) {
      const before = (await desk.ask('kits', {})).labels.blanks
      await desk.ask('labels.printKits', { for: { whom: 'reserve', count: 1 }, stock: name })
      expect(before - (await desk.ask('kits', {})).labels.blanks, name).toBe(kitLabels)
    }
    expect(labels.blanks).toBeGreaterThan(0)
  })

  test('takes a stock by its measurements, and prints on it', async () => {
    const stock: LabelStock = { ...small, widthMm: 70, heightMm: 30, coldC: -80 }
    const { name } = await desk.ask('stock.describe', { stock })
    expect(name).toBe('roll-70x30-203')
    expect(await named(name)).toMatchObject({
      stock,
      isCommon: false,
      words: 'roll, 70 × 30 mm, 203 dpi',
    })
    await desk.ask('labels.printKits', { for: { whom: 'reserve', count: 1 }, stock: name })
  })

  test('has each size once: described again, its other measurements are put right', async () => {
    const before = (await table()).length
    const stock: LabelStock = { ...small, marginMm: 2, coldC: -40 }
    expect(await desk.ask('stock.describe', { stock })).toEqual({ name: 'roll-51x25' })
    expect(await table()).toHaveLength(before)
    expect((await named('roll-51x25'))?.stock).toEqual(stock)
    await desk.ask('stock.describe', { stock: small })
  })

  test('takes a stock off, and what was printed on it is still known', async () => {
    await desk.ask('stock.retire', { name: 'roll-57.2x31.8-203' })
    expect(await named('roll-57.2x31.8-203')).toBeUndefined()
    expect(await desk.code('stock.retire', { name: 'roll-57.2x31.8-203' })).toBe('stock-unknown')
    await desk.ask('stock.describe', { stock: commonStocks['roll-57.2x31.8-203'] })
    expect(await named('roll-57.2x31.8-203')).toBeDefined()
  })

  test('is refused as a whole name nobody described', async () => {
    const print = { for: { whom: 'reserve', count: 1 }, stock: 'roll-9x9-203' } as const
    expect(await desk.code('labels.printKits', print)).toBe('stock-unknown')
  })
})

describe('impossible sizes are refused, and the measurement is named', () => {
  test.each([
    ['columns', { columns: 4 }, /4 labels across need 268.8 mm, and the paper is 210 mm wide/],
    ['rows', { rows: 8 }, /8 labels down need/],
    ['stepAcrossMm', { stepAcrossMm: 60 }, /would lie on each other/],
    ['stepDownMm', { stepDownMm: 30 }, /would lie on each other/],
    ['marginMm', { marginMm: 10, heightMm: 20, stepDownMm: 38.1 }, /leave 0.0 mm of the label/],
  ] as const)('%s', async (field, changed, say) => {
    const refusal = await desk.refusal('stock.describe', { stock: { ...sheet, ...changed } })
    expect(refusal).toMatchObject({ code: 'stock-impossible', field })
    expect(refusal.say).toMatch(say)
  })

  test.each([
    { widthMm: -5 },
    { widthMm: Number.NaN },
    { heightMm: 0 },
    { dpi: 72 },
    { columns: 1.5 },
    { coldC: -274 },
    { paperWidthMm: 1e9 },
  ])('a measurement that is none: %j', async (changed) => {
    expect(await desk.code('stock.describe', { stock: { ...sheet, ...changed } as never })).toBe(
      'bad-input',
    )
  })
})

describe('what does not fit', () => {
  test('is refused with the stock that would, and nothing is recorded', async () => {
    const stock: LabelStock = { ...small, widthMm: 30, heightMm: 15 }
    const { name } = await desk.ask('stock.describe', { stock })
    const print = { for: { whom: 'reserve', count: 1 }, stock: name } as const
    expect(await desk.refusal('labels.printKits', print)).toMatchObject({
      code: 'label-too-small',
      next: 'Load roll, 50.8 × 25.4 mm, 203 dpi and print again.',
    })
    expect(await named(name)).toMatchObject({ kitLabels: null })
  })

  test('is seen in the preview, before the stock is bought', async () => {
    const stock: LabelStock = { ...small, widthMm: 20, heightMm: 10, marginMm: 1 }
    const preview = await desk.ask('stock.preview', { stock })
    expect(preview.labels).toEqual([])
    expect(preview.refusal?.next).toMatch(/^Load /)
  })
})

describe('the preview', () => {
  test('shows each label of a kit within its size', async () => {
    const preview = await desk.ask('stock.preview', { stock: small })
    expect(preview).toMatchObject({ widthMm: 50.8, heightMm: 25.4, refusal: null })
    expect(preview.labels).toHaveLength(preview.kitLabels ?? 0)
    const dots = preview.labels.flatMap(({ marks }) =>
      marks.flatMap((mark) => (mark.is === 'bars' ? mark.dots : [])),
    )
    expect(dots.length).toBeGreaterThan(100)
    for (const { x, y, width, height } of dots) {
      expect(x).toBeGreaterThanOrEqual(0)
      expect(y).toBeGreaterThanOrEqual(0)
      expect(x + width).toBeLessThanOrEqual(50.81)
      expect(y + height).toBeLessThanOrEqual(25.41)
    }
  })
})

describe('a badge, as the label of a cooler', () => {
  test('is printed once; then it is reprinted, the old one destroyed', async () => {
    const badge = { person: crew.sampler, stock: 'roll-51x25' }
    await desk.ask('labels.printBadge', badge)
    expect(await desk.code('labels.printBadge', badge)).toBe('first-copy-still-good')
    const again = { number: crew.sampler, reason: 'torn', words: '', stock: 'roll-51x25' } as const
    expect(await desk.code('label.reprint', again)).toBe('first-copy-still-good')
    expect((await desk.ask('label.reprint', { ...again, destroyed: true })).copy).toBe(2)
  })
})

describe('printers', () => {
  test('are none where this window reaches none, and there is always the PDF', async () => {
    expect(await desk.ask('printers', {})).toEqual({
      printers: [],
      trouble: 'This window reaches no printers: print from the PDF.',
    })
    const choose = { kind: 'kits', printer: 'gone', stock: 'sheet-a4' } as const
    expect(await desk.code('printing.choose', choose)).toBe('printer-gone')
    expect(await desk.code('printing.goOn', { printer: null })).toBe('nothing-printing')
  })

  test('are remembered for each kind of label, with the stock in them and their offset', async () => {
    await desk.ask('printing.choose', { kind: 'coolers', printer: null, stock: 'sheet-a4' })
    await desk.ask('printing.offset', { printer: null, rightMm: 1.5, downMm: -0.5 })
    const { chosen, offsets } = await desk.ask('printing', {})
    expect(chosen).toMatchObject({
      kits: { printer: null, stock: 'roll-51x25' },
      coolers: { printer: null, stock: 'sheet-a4' },
    })
    expect(offsets).toEqual({ '': { rightMm: 1.5, downMm: -0.5 } })
  })

  test('get a calibration page with a ruler', async () => {
    const { pdf, sentTo } = await desk.ask('printing.calibrate', { kind: 'coolers' })
    expect(pdf.name).toBe('calibration-sheet-a4.pdf')
    expect(sentTo).toBeNull()
  })
})

describe('a printer that is at work', () => {
  test('is stopped before the rest of a run is begun: labels would come out twice', async () => {
    const endless: Printers = {
      list: () => Promise.resolve(granted([{ name: 'slow', words: 'slow', trouble: null }])),
      send: (_pdf, printer) => Promise.resolve(granted({ printer, job: 'slow-1' })),
      progress: () => Promise.resolve(granted({ is: 'waiting', say: 'Printing.' })),
      cancel: () => Promise.resolve(),
    }
    const { desk: busy } = await openStation({}, endless)
    await busy.ask('printing.choose', { kind: 'kits', printer: 'slow', stock: 'roll-51x25' })
    const reserve = { whom: 'reserve', count: 1 } as const
    const { kits, sentTo } = await busy.ask('labels.printKits', {
      for: reserve,
      stock: 'roll-51x25',
    })
    expect(sentTo).toBe('slow')
    const jam = { last: kits[0] ?? null, good: 1, ruined: 0 }
    expect(await busy.code('labels.goOn', jam)).toBe('printer-busy')
    await busy.ask('printing.stop', {})
    expect(await busy.code('printing.goOn', { printer: null })).toBe('last-label-unknown')
    expect((await busy.ask('labels.goOn', jam)).sentTo).toBe('slow')
    await busy.end()
  })
})
