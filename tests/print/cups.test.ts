/**
 * Labels on a printer of the operating system: its real printing system (CUPS) with its PDF printer. What
 * comes out is read back by pdf.js and ZXing. Left out, by name, where it cannot be started.
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { PrintRoom } from '../../electron/desk/print-room.ts'
import { systemPrinters } from '../../electron/desk/system-printers.ts'
import { layKitLabels } from '../../electron/print/kit-labels.ts'
import type { Printers } from '../../electron/print/printers.ts'
import { commonStocks } from '../../shared-types/common-stocks.ts'
import { cupsMissing, type RunningCups, startCups } from '../support/cups.ts'
import { drawnPages, sightings } from './read-pdf.ts'
import { yes } from './runs.ts'
import { batch, reservedKit } from './samples.ts'

const missing = cupsMissing()
const why = missing === null ? '' : ` (left out: ${missing})`

const labelsOf = (stock: keyof typeof commonStocks, kits: number) => {
  const wanted = Array.from({ length: kits }, (_, place) => reservedKit(place + 1))
  return yes(layKitLabels(wanted, commonStocks[stock], batch))
}

describe.skipIf(missing !== null)(`a printer of the operating system${why}`, () => {
  let cups: RunningCups
  let printers: Printers
  beforeAll(async () => {
    cups = await startCups()
    cups.addPrinter('labels')
    printers = await systemPrinters(process.platform)
  }, 60_000)
  afterAll(() => cups.stop())

  const room = () => new PrintRoom({ printers, onNews: () => {} })
  const settles = (there: PrintRoom, state: string) =>
    expect.poll(() => there.look().job?.state, { timeout: 60_000, interval: 200 }).toBe(state)
  const none = { rightMm: 0, downMm: 0 }

  test('is found by its name, ready', async () => {
    expect(yes(await printers.list())).toEqual([{ name: 'labels', words: 'labels', trouble: null }])
  })

  test('prints labels at their true size, and they scan', async () => {
    const before = cups.printed().length
    const there = room()
    const run = labelsOf('roll-51x25', 2)
    there.print(run, 'labels', none, 'labels')
    await settles(there, 'done')
    const [pdf] = cups.printed().slice(before)
    const pages = await drawnPages(pdf ?? new Uint8Array(), 203)
    expect(pages).toHaveLength(run.blanks)
    expect([pages[0]?.width, pages[0]?.height]).toEqual([406, 203])
    const numbers = (await sightings(pages)).map(({ text }) => text)
    expect(new Set(numbers).size).toBe(2 * 5)
  }, 120_000)

  test('says in words that it was stopped, and goes on when it is let go', async () => {
    cups.hold('labels')
    expect(yes(await printers.list())[0]?.trouble).toMatch(/stopped|paused/)
    const there = room()
    there.print(labelsOf('roll-51x25', 1), 'labels', none, 'labels')
    await expect
      .poll(() => there.look().job?.say, { timeout: 30_000 })
      .toMatch(/^labels: it was (?:paused|stopped on this laptop)\.$/)
    cups.letGo('labels')
    await settles(there, 'done')
  }, 120_000)

  test('stopped by the person, takes back what waits', async () => {
    cups.hold('labels')
    const before = cups.printed().length
    const there = room()
    there.print(labelsOf('roll-51x25', 1), 'labels', none, 'labels')
    await expect.poll(() => there.look().job?.say, { timeout: 30_000 }).toContain('labels: it was')
    await there.stop()
    expect(there.look().job).toMatchObject({ state: 'stopped', out: 0, unsure: true })
    cups.letGo('labels')
    const after = room()
    after.print(labelsOf('roll-51x25', 1), 'labels', none, 'labels')
    await settles(after, 'done')
    expect(cups.printed()).toHaveLength(before + 1)
  }, 120_000)

  test('that vanishes mid batch is told, with what to do', async () => {
    cups.addPrinter('loose')
    cups.hold('loose')
    const there = room()
    there.print(labelsOf('roll-51x25', 1), 'loose', none, 'labels')
    await expect.poll(() => there.look().job?.say, { timeout: 30_000 }).toContain('loose: it was')
    cups.removePrinter('loose')
    await settles(there, 'failed')
    expect(there.look().job?.say).toBe('The printer loose is gone from this laptop.')
    expect(there.look().job?.next).toContain('Plug it in and go on')
  }, 120_000)

  test('is never handed a name that a shell would run', async () => {
    const sent = await printers.send(new Uint8Array(), 'labels; touch /tmp/broken', {
      widthMm: 50,
      heightMm: 25,
    })
    expect(sent.ok ? '' : sent.refusal.code).toBe('printer-gone')
  })
})
