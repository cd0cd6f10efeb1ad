/** Labels on their way to a printer that is slow, that is stopped, and that vanishes mid batch. */
import { expect, test } from 'vitest'
import { PrintRoom } from '../../electron/desk/print-room.ts'
import { layKitLabels } from '../../electron/print/kit-labels.ts'
import type { Printers } from '../../electron/print/printers.ts'
import { commonStocks } from '../../shared-types/common-stocks.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import { pageTexts } from '../print/read-pdf.ts'
import { yes } from '../print/runs.ts'
import { batch, reservedKit } from '../print/samples.ts'

const none = { rightMm: 0, downMm: 0 }
const run = yes(
  layKitLabels(
    Array.from({ length: 15 }, (_, place) => reservedKit(place + 1)),
    commonStocks['roll-51x25'],
    batch,
  ),
)

/** A printer that a test drives: it keeps what it is handed, and can be unplugged. */
class Bench {
  readonly pages: string[] = []
  isThere = true
  /** Portions that come out before the next one waits in the queue for good. */
  takes = Number.POSITIVE_INFINITY
  /** Pages after which it is unplugged. */
  vanishesAfter = Number.POSITIVE_INFINITY
  cancelled = 0
  news = 0
  readonly room: PrintRoom

  constructor() {
    const gone = (): Result<never> => refused('printer-gone', 'It is gone.', 'Plug it in.')
    const printers: Printers = {
      list: () => Promise.resolve(granted([])),
      send: async (pdf, printer) => {
        if (!this.isThere || this.pages.length >= this.vanishesAfter) return gone()
        if (this.takes > 0) this.pages.push(...(await pageTexts(pdf)))
        return granted({ printer, job: 'a-1' })
      },
      progress: () => {
        if (!this.isThere) return Promise.resolve(gone())
        this.takes -= 1
        const is = this.takes >= 0 ? ({ is: 'out' } as const) : waiting
        return Promise.resolve(granted(is))
      },
      cancel: () => {
        this.cancelled += 1
        return Promise.resolve()
      },
    }
    this.room = new PrintRoom({ printers, onNews: () => (this.news += 1) })
  }

  get job() {
    return this.room.look().job
  }
}
const waiting = { is: 'waiting', say: 'bench: it is out of labels.' } as const
const settles = (bench: Bench, state: string) =>
  expect.poll(() => bench.job?.state, { timeout: 15_000 }).toBe(state)

test('a whole batch comes out in its order, in portions, and says that it is done', async () => {
  const bench = new Bench()
  expect(bench.room.print(run, 'bench', none, 'labels')).toBe(true)
  expect(bench.room.print(run, 'bench', none, 'labels')).toBe(false)
  await settles(bench, 'done')
  expect(bench.pages).toHaveLength(run.blanks)
  expect(bench.pages.join(' ').match(/LEFT/g)).toHaveLength(15)
  expect(bench.job?.say).toBe(`All ${run.blanks} labels are out.`)
  expect(bench.news).toBeGreaterThan(2)
})

test('a printer that vanishes between two portions is told at its label, and another goes on', async () => {
  const bench = new Bench()
  bench.vanishesAfter = 60
  bench.room.print(run, 'bench', none, 'labels')
  await settles(bench, 'failed')
  expect(bench.job).toMatchObject({
    out: 60,
    unsure: false,
    say: 'It is gone.',
    next: 'Plug it in.',
  })
  bench.vanishesAfter = Number.POSITIVE_INFINITY
  expect(bench.room.goOn('another')).toBe(true)
  await settles(bench, 'done')
  expect(bench.job?.printer).toBe('another')
  expect(bench.pages).toHaveLength(run.blanks)
  expect(new Set(bench.pages).size).toBe(bench.pages.length)
})

test('one that vanishes with labels in it does not go on by itself: they may have come out', async () => {
  const bench = new Bench()
  bench.takes = 1
  bench.room.print(run, 'bench', none, 'labels')
  await expect.poll(() => bench.job?.say, { timeout: 15_000 }).toContain('out of labels')
  bench.isThere = false
  await settles(bench, 'failed')
  expect(bench.job).toMatchObject({ out: 60, unsure: true, say: 'It is gone.' })
  expect(bench.job?.next).toContain('Look which label came out last, and scan it')
  expect(bench.room.goOn('another')).toBe(false)
})

test('stopped, it hands nothing more over and takes back what waits; a scan says where it goes on', async () => {
  const bench = new Bench()
  bench.takes = 1
  bench.room.print(run, 'bench', none, 'labels')
  await expect.poll(() => bench.job?.say, { timeout: 15_000 }).toContain('out of labels')
  await bench.room.stop()
  expect(bench.job).toMatchObject({ state: 'stopped', out: 60, unsure: true })
  expect(bench.cancelled).toBe(1)
  expect(bench.pages).toHaveLength(60)
  expect(bench.room.goOn(null)).toBe(false)
  expect(bench.room.print(run, 'bench', none, 'the rest')).toBe(true)
  bench.takes = Number.POSITIVE_INFINITY
  await settles(bench, 'done')
})

test('sheets are handed over whole', async () => {
  const bench = new Bench()
  const stock = commonStocks['sheet-a4']
  const kits = Array.from({ length: 15 }, (_, place) => reservedKit(place + 1))
  const sheets = yes(layKitLabels(kits, stock, batch))
  bench.room.print(sheets, 'bench', none, 'labels')
  await settles(bench, 'done')
  expect(bench.pages).toHaveLength(Math.ceil(sheets.blanks / 21))
})

test('the PDF of a batch tells how far it is, and moves its labels by whole dots', async () => {
  const bench = new Bench()
  const seen: number[] = []
  const room = new PrintRoom({
    printers: undefined,
    onNews: () => seen.push(room.look().making?.made ?? -1),
  })
  const [plain, moved] = [
    await room.write(run, none),
    await bench.room.write(run, { rightMm: 1, downMm: 0 }),
  ]
  expect(seen.length).toBeGreaterThan(1)
  expect(seen.filter((made) => made >= 0).toSorted((a, b) => a - b)).toEqual(
    seen.filter((made) => made >= 0),
  )
  expect(room.look().making).toBeNull()
  expect(await pageTexts(moved)).toEqual(await pageTexts(plain))
  expect(Buffer.compare(moved, plain)).not.toBe(0)
})
