import type { Page } from 'playwright-core'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { browserPath } from '../loopback/support/chromium.ts'
import { pageTexts } from '../print/read-pdf.ts'
import { kitOf, numberParts, sampleNumber } from '../../shared-types/sample-number.ts'
import { closeDay } from '../support/close.ts'
import { checkIn, crewPin, leadPin } from '../support/desk.ts'
import { type Afternoon, afternoon, placeBags, saved } from './support/dusk.ts'
import { focused, press, scan, signIn, type } from './support/hands.ts'
import { barriers, picture } from './support/look.ts'
import { type ShownDesk, startDesk } from './support/start-desk.ts'

/** A number typed as a person counts it, and Enter. */
async function count(page: Page, words: string, counted: number): Promise<void> {
  await expect.poll(() => focused(page)).toBe(words)
  await type(page, String(counted))
  await press(page, 'Enter')
}

describe.skipIf(browserPath === undefined)('the close of the day', () => {
  let shown: ShownDesk
  let day: Afternoon

  /** Two deer sampled, their four bags in one cooler, 80 kits in stock and 18 in a sampler's hands. */
  beforeEach(async () => {
    day = await afternoon()
    await placeBags(day.desk, day.bags, day.cooler)
    shown = await startDesk(day.desk)
    await signIn(shown.page, 'Orla Vance', leadPin)
    await press(shown.page, 'F8')
    await shown.page.getByRole('heading', { name: 'Counted 0 of 6' }).waitFor()
  })
  afterEach(() => shown.stop())

  const row = (words: string) =>
    shown.page.getByRole('listitem').filter({ has: shown.page.getByLabel(words, { exact: true }) })
  const counted = (many: number) =>
    shown.page.getByRole('heading', { name: `Counted ${many} of 6` }).waitFor()
  const closeNow = () => day.desk.ask('close', {})
  const labels = async () => (await day.desk.ask('kits', {})).labels

  /** Everything as it is, with the bags counted as `bags`. */
  async function countAll(bags: number) {
    const { blanks, printed } = await labels()
    await count(shown.page, 'Animals checked in today', 2)
    await count(shown.page, 'Bags in cooler North 1', bags)
    await count(shown.page, 'Kits in stock', 80)
    await count(shown.page, 'Kits in hand: Ines Tarr', 18)
    await count(shown.page, 'Blank labels left', blanks)
    await count(shown.page, 'Printed labels not used', printed)
    await counted(6)
  }

  /** The lead's PIN, then a second person by their key, then theirs. */
  async function signBoth(pin: string) {
    await type(shown.page, pin)
    await press(shown.page, 'Enter')
    await expect.poll(() => focused(shown.page)).toContain('Ines Tarr')
    await press(shown.page, '1 Enter')
    await expect.poll(() => focused(shown.page)).toBe('PIN of Ines Tarr')
    await picture(shown.page, 'close-second')
    await type(shown.page, crewPin)
    await press(shown.page, 'Enter')
  }

  test('the count is blind: nothing that the log expects is shown before it is in', async () => {
    const { blanks } = await labels()
    const words = await shown.page.getByRole('list').allInnerTexts()
    for (const expected of ['80', '18', String(blanks)])
      expect(words.join()).not.toContain(expected)
    await count(shown.page, 'Animals checked in today', 2)
    await expect.poll(() => row('Animals checked in today').innerText()).toContain('agrees')
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'close')
  })

  test('a day is counted, its planted variance explained and signed by keyboard alone', async () => {
    await countAll(3)
    const bags = row('Bags in cooler North 1')
    await expect
      .poll(() => bags.innerText())
      .toMatch(/−1\s+1 fewer than the log’s 4, no reason yet/)
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'close-variance')

    // The focus is on the reasons: 5 is 'lost'.
    await press(shown.page, '2')
    await expect.poll(() => shown.page.getByRole('radio', { name: /^lost/ }).isChecked()).toBe(true)
    await press(shown.page, 'Tab')
    await type(shown.page, 'torn open by a dog')
    await press(shown.page, 'Enter')
    await expect.poll(() => focused(shown.page)).toBe('PIN of Orla Vance')
    expect(await bags.innerText()).toContain('lost, torn open by a dog')
    await shown.page.getByText('Everything is counted and explained.').first().waitFor()
    await picture(shown.page, 'close-sign')
    await signBoth(leadPin)

    await shown.page.getByText('The day is closed.').first().waitFor()
    await shown.page
      .getByText(/Signed by Orla Vance and Ines Tarr/)
      .first()
      .waitFor()
    expect(await barriers(shown.page)).toEqual([])
    const sheet = await saved(shown.page, 'Alt+S')
    const text = (await pageTexts(sheet.bytes)).join(' ')
    expect(sheet.name).toMatch(/2026-11-14.*\.pdf$/)
    expect(text).toContain('Cinder Gap')
    expect(text).toContain('Orla Vance')
    expect(text).toContain('torn open by a dog')
    await picture(shown.page, 'close-closed')
    expect((await closeNow()).state).toBe('closed')
    expect(shown.complaints).toEqual([])
  })

  test('a count typed wrong is typed again, and no reason is asked for it any more', async () => {
    await countAll(5)
    await expect.poll(() => row('Bags in cooler North 1').innerText()).toContain('+1')
    await shown.page.getByLabel('Bags in cooler North 1', { exact: true }).fill('4')
    await press(shown.page, 'Enter')
    await expect.poll(() => focused(shown.page)).toBe('PIN of Orla Vance')
    expect(await row('Bags in cooler North 1').innerText()).toContain('agrees')
    expect((await closeNow()).open).toEqual([])
  })

  test('a thing counted again keeps the focus on the screen, and never drops it', async () => {
    await countAll(5)
    await expect.poll(() => focused(shown.page)).toContain('miscounted')
    await shown.page.getByLabel('Bags in cooler North 1', { exact: true }).fill('6')
    await press(shown.page, 'Enter')
    await expect.poll(() => row('Bags in cooler North 1').innerText()).toContain('+2')
    await expect.poll(() => focused(shown.page)).toMatch(/miscounted|Bags in cooler North 1/)
  })

  test('signing too early is told in the strip, and leads to what stands in the way', async () => {
    await shown.page.getByLabel('PIN of Orla Vance').focus()
    await type(shown.page, leadPin)
    await press(shown.page, 'Enter')
    await shown.page
      .getByRole('alert')
      .getByText(/things are not counted yet/)
      .waitFor()
    await expect.poll(() => focused(shown.page)).toContain('Go on here')
  })

  test('what the strip said on one screen does not stand on the next', async () => {
    await count(shown.page, 'Animals checked in today', 2)
    await shown.page
      .getByRole('status')
      .getByText(/counted\.$/)
      .waitFor()
    // What a deed says goes along for a second, so that it is not lost on the way.
    await expect
      .poll(
        async () => {
          await press(shown.page, 'F2')
          const words = await shown.page.getByRole('status').allInnerTexts()
          await press(shown.page, 'F8')
          return words.join()
        },
        { timeout: 10_000 },
      )
      .not.toContain('counted.')
  })

  test('an animal without a usable place of harvest is told before anybody signs', async () => {
    await checkIn(day.desk, { place: { by: 'not-known' } })
    await shown.page
      .getByText(/1 animal has no place of harvest/)
      .first()
      .waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'close-places')
  })

  test('nothing typed is not a count of none', async () => {
    await press(shown.page, 'Enter')
    await shown.page.getByText('Type the number you counted; 0 if there is none.').first().waitFor()
    expect(await focused(shown.page)).toBe('Animals checked in today')
    expect((await closeNow()).items.every((item) => item.counted === null)).toBe(true)
  })

  test("'other' is no reason without words", async () => {
    await countAll(3)
    await press(shown.page, '0')
    await expect
      .poll(() => shown.page.getByRole('radio', { name: /^other/ }).isChecked())
      .toBe(true)
    await press(shown.page, 'Enter')
    await shown.page.getByText('Say what happened.').first().waitFor()
    expect(await focused(shown.page)).toBe('In a few words')
  })

  test('what stands in the way of signing is on top, one key away', async () => {
    await day.desk.ask('bag.takeOut', { bag: day.bags[0] ?? '', reason: 'label smeared' })
    await shown.page.getByText('1 sealed bag is in no cooler.').first().waitFor()
    await countAll(3)
    await press(shown.page, 'Alt+1')
    await shown.page.getByRole('region', { name: 'Still on the bench: 1' }).waitFor()
    await press(shown.page, 'F8')
    const signing = shown.page.getByRole('button', { name: 'Sign and close the day' })
    await signing.click()
    expect((await closeNow()).state).toBe('open')
  })

  test('Alt and a digit lead back to where the counting stopped', async () => {
    await count(shown.page, 'Animals checked in today', 2)
    await counted(1)
    await shown.page.getByRole('link', { name: /Line/ }).focus()
    await press(shown.page, 'Alt+1')
    await expect.poll(() => focused(shown.page)).toBe('Bags in cooler North 1')
  })

  test('a wrong PIN signs nothing and leaves the counts as they are', async () => {
    await countAll(4)
    await expect.poll(() => focused(shown.page)).toBe('PIN of Orla Vance')
    await signBoth('1111')
    await shown.page.getByText('That PIN is wrong.').first().waitFor()
    expect((await closeNow()).state).toBe('open')
    await counted(6)
  })

  test('a volunteer counts, but the signature is the lead’s', async () => {
    const window = await shown.openWindow()
    await signIn(window, 'Bo Quill')
    await press(window, 'F8')
    await count(window, 'Animals checked in today', 2)
    await window.getByText('Only the lead signs.').waitFor()
    expect(await window.getByLabel(/^PIN of/).count()).toBe(0)
    // What one window counted stands in the other at once.
    await counted(1)
  })

  test('a count typed in another window does not move the fingers of this one elsewhere', async () => {
    await type(shown.page, '2')
    await day.desk.ask('count.enter', { item: { of: 'kits-in-stock' }, counted: 80 })
    await counted(1)
    expect(await focused(shown.page)).toBe('Animals checked in today')
    await press(shown.page, 'Enter')
    await expect.poll(() => focused(shown.page)).toBe('Bags in cooler North 1')
    await counted(2)
  })

  test('the likely cause stands beside the variance: one key to look, one to settle', async () => {
    const { serial } = numberParts(kitOf(day.bags[0] as never))
    const stub = sampleNumber('26KRVA' as never, serial, 'H')
    const lost = { number: stub, reason: 'lost', words: '', stock: 'roll-51x25' } as const
    await day.desk.ask('label.reprint', lost)
    const { blanks, printed } = await labels()
    await count(shown.page, 'Animals checked in today', 2)
    await count(shown.page, 'Bags in cooler North 1', 4)
    await count(shown.page, 'Kits in stock', 80)
    await count(shown.page, 'Kits in hand: Ines Tarr', 18)
    await count(shown.page, 'Blank labels left', blanks)
    await count(shown.page, 'Printed labels not used', printed + 1)
    const causes = shown.page.getByRole('list', { name: 'Likely causes, by the log' })
    await expect
      .poll(() => causes.innerText())
      .toMatch(/was given up as lost at .* and printed twice/)
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'close-cause')
    await press(shown.page, 'Alt+Y')
    await expect.poll(() => focused(shown.page)).toBe('PIN of Orla Vance')
    expect(await row('Printed labels not used').innerText()).toContain('found again')
  })

  test('a cooler is counted by scanning its bags, and the one that is missing is named', async () => {
    await count(shown.page, 'Animals checked in today', 2)
    await expect.poll(() => focused(shown.page)).toBe('Bags in cooler North 1')
    await press(shown.page, 'Alt+B')
    await shown.page.getByRole('dialog', { name: 'Bags in cooler North 1' }).waitFor()
    for (const [place, bag] of day.bags.slice(1).entries()) {
      await scan(shown.page, bag)
      await shown.page
        .getByText(`${place + 1} scanned.`)
        .first()
        .waitFor()
    }
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'close-scan')
    await press(shown.page, 'F12')
    const bags = row('Bags in cooler North 1')
    await expect.poll(() => bags.innerText()).toMatch(/not there:\s+26-KRV-A0001-L/)
  })

  test('an absurd number is asked for once more before it stands', async () => {
    await count(shown.page, 'Animals checked in today', 3300)
    await shown.page.getByText('3,300 is more than ten times what can be here.').first().waitFor()
    await press(shown.page, 'Enter')
    await counted(1)
  })

  test('each balance of a ledger opens to the entries behind it', async () => {
    await press(shown.page, 'Alt+G')
    await shown.page.getByRole('dialog', { name: 'Ledgers' }).waitFor()
    await shown.page.getByRole('button', { name: /in cooler North 1/ }).click()
    await shown.page.getByRole('table', { name: 'Entries behind in cooler North 1' }).waitFor()
    expect(await shown.page.getByRole('row').count()).toBe(5)
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'ledgers')
    await press(shown.page, 'Escape')
  })

  test('the lead leaves a note that the next one reads on opening the day', async () => {
    await shown.page.getByLabel('What should they know?').fill('the lid of North 1 is cracked')
    await shown.page.getByRole('button', { name: 'Keep the note' }).click()
    await shown.page
      .getByText(/^Kept: Orla Vance/)
      .first()
      .waitFor()
    const { note } = await day.desk.ask('handover', {})
    expect(note?.words).toBe('the lid of North 1 is cracked')
    // The next morning it stands in the dialog that opens the day.
    await closeDay(day.desk)
    day.desk.wait(14 * 60)
    await press(shown.page, 'F10')
    await shown.page.getByRole('button', { name: /Open a day/ }).waitFor()
    await press(shown.page, 'Alt+D')
    const dialog = shown.page.getByRole('dialog', { name: 'Open a day' })
    await dialog.getByText(/the lid of North 1 is cracked/).waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'handover-note')
  })
})
