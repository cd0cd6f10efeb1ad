/**
 * Labels printed for real from a window: over the loopback, through the system's own printing system
 * (CUPS) with its PDF printer. Left out, by name, where that cannot be started.
 */
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { systemPrinters } from '../../electron/desk/system-printers.ts'
import { browserPath } from '../loopback/support/chromium.ts'
import { drawnPages, sightings } from '../print/read-pdf.ts'
import { cupsMissing, type RunningCups, startCups } from '../support/cups.ts'
import { leadPin, openStation } from '../support/desk.ts'
import { type PersonKeys, personKeys } from './person-keys.ts'
import { focused, press, scan, signIn } from './support/hands.ts'
import { barriers, picture } from './support/look.ts'
import { type ShownDesk, startDesk } from './support/start-desk.ts'

const missing = browserPath === undefined ? 'no browser is here' : cupsMissing()
const why = missing === null ? '' : ` (left out: ${missing})`

describe.skipIf(missing !== null)(`a label printer${why}`, () => {
  let cups: RunningCups
  let shown: ShownDesk
  let keys: PersonKeys

  beforeAll(async () => {
    cups = await startCups()
    cups.addPrinter('labels')
  })
  afterAll(() => cups.stop())
  beforeEach(async () => {
    const { desk } = await openStation({}, await systemPrinters(process.platform))
    shown = await startDesk(desk)
    await signIn(shown.page, 'Orla Vance', leadPin)
    await press(shown.page, 'F6')
    await expect.poll(() => focused(shown.page)).toContain('Give out')
    keys = personKeys(shown.page)
  })
  afterEach(() => shown.stop())

  async function choosePrinter() {
    await shown.page.getByRole('button', { name: 'Stock and printer' }).focus()
    await keys.press('Enter')
    await shown.page.getByRole('radio', { name: /^labels ready/ }).click()
    await expect
      .poll(async () => (await shown.desk.ask('printing', {})).chosen.kits.printer)
      .toBe('labels')
    expect(await barriers(shown.page)).toEqual([])
    await keys.press('Escape')
    await shown.page.getByText(/by labels\. A kit takes/).waitFor()
  }

  async function number(kits: number) {
    await shown.page.getByLabel('Number kits for whoever comes').focus()
    await keys.type(String(kits))
    await keys.press('Enter')
    await shown.page.getByText(`${kits} kits numbered. On the way to labels.`).first().waitFor()
  }

  test('is chosen once; labels come out of it, and the person sees that they are out', async () => {
    await choosePrinter()
    await number(2)
    await shown.page.getByText(/All 18 labels are out\./).waitFor({ timeout: 60_000 })
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'printing-done')
    const pdf = cups.printed().at(-1) ?? new Uint8Array()
    const numbers = (await sightings(await drawnPages(pdf, 203))).map(({ text }) => text)
    const { reserved } = await shown.desk.ask('kits', {})
    expect(new Set(numbers)).toEqual(
      new Set(reserved.flatMap(({ labels }) => labels.map((each) => each.number))),
    )
    expect(shown.complaints).toEqual([])
  })

  test('that stops is told in words; stopped, it goes on from the label that is scanned', async () => {
    await choosePrinter()
    cups.hold('labels')
    await number(2)
    await shown.page.getByText(/labels: it was (?:stopped|paused)/).waitFor({ timeout: 60_000 })
    await picture(shown.page, 'printing-stopped')
    await shown.page.getByRole('button', { name: 'Stop the printer' }).click()
    await shown.page.getByText(/Look which label came out last, and scan it/).waitFor()
    expect(await barriers(shown.page)).toEqual([])
    cups.letGo('labels')
    const before = cups.printed().length
    await shown.page.getByRole('button', { name: 'Scan the last good label' }).click()
    await expect.poll(() => focused(shown.page)).toContain('The last good label')
    const { reserved } = await shown.desk.ask('kits', {})
    const left = reserved[0]?.labels.find(({ number: each }) => each[10] === 'L')?.number ?? ''
    await scan(shown.page, left)
    await shown.page.getByText(/the next is the right bag label/).waitFor()
    await expect.poll(() => focused(shown.page)).toContain('How many came out ruined')
    await keys.press('Enter')
    await shown.page.getByText(/All 17 labels are out\./).waitFor({ timeout: 60_000 })
    expect(cups.printed()).toHaveLength(before + 1)
  })
})
