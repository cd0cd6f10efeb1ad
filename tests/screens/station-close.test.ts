import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { browserPath } from '../loopback/support/chromium.ts'
import { pageTexts } from '../print/read-pdf.ts'
import { closeDay } from '../support/close.ts'
import { leadPin } from '../support/desk.ts'
import { kitAcross, officeOver, oneDeer, twoDesks } from '../support/two-desks.ts'
import { saved } from './support/dusk.ts'
import { focused, press, signIn, type } from './support/hands.ts'
import { barriers, picture } from './support/look.ts'
import { type ShownDesk, startDesk } from './support/start-desk.ts'

// One evening at the office, in the order in which it happens: each test goes on where the last ended.
describe.skipIf(browserPath === undefined)('the station’s close at the office', () => {
  let shown: ShownDesk
  const has = (words: string | RegExp) =>
    expect.poll(() => focused(shown.page), { timeout: 10_000 }).toMatch(words)

  beforeAll(async () => {
    const { a, c } = await twoDesks()
    await oneDeer(a, 'T100')
    await kitAcross(a, c, 'T300')
    await closeDay(a.desk, { 'kits-in-stock': -1, 'unused-kit-labels': -4 })
    await closeDay(c.desk, { 'blank-labels': -7 })
    const { office } = await officeOver(a, c)
    await a.desk.end()
    await c.desk.end()
    shown = await startDesk(office)
    await signIn(shown.page, 'Ada Moor', leadPin)
  }, 60_000)
  afterAll(() => shown.stop())

  test('shows each desk’s close and what is left over both, and nothing of what evens out', async () => {
    const { page } = shown
    await press(page, 'F8')
    await page.getByRole('heading', { name: /^Close the station/ }).waitFor()
    const desks = page.getByRole('table', { name: 'Desks of the station' })
    await expect.poll(() => desks.innerText()).toContain('26KRVC')
    expect(await desks.innerText()).toContain('Orla Vance')
    const counts = page.locator('.station-items')
    expect(await counts.innerText()).toContain('evens out over the desks')
    await page
      .getByText('1 variance is left over all desks, without a reason.', { exact: true })
      .waitFor()
    expect(await barriers(page)).toEqual([])
    await picture(page, 'station-close')
  })

  test('signing too early says so in the strip, and leads to what is in the way', async () => {
    const { page } = shown
    await page.getByLabel('PIN of Ada Moor').focus()
    await type(page, leadPin)
    await press(page, 'Enter')
    await page
      .getByRole('alert')
      .getByText(/left over all desks/)
      .waitFor()
    await has(/Go on here/)
  })

  test('what is left is explained by keyboard, and two people sign; the sheet names both desks', async () => {
    const { page } = shown
    await page.getByRole('button', { name: 'Explain: Blank labels left' }).focus()
    await press(page, 'Enter')
    await has(/miscounted/)
    await press(page, '5')
    await press(page, 'Tab')
    await type(page, 'wet roll')
    await press(page, 'Enter')
    await page.getByText('Everything is counted and explained.').waitFor()
    await page.getByLabel('PIN of Ada Moor').fill(leadPin)
    await page.getByLabel('PIN of Ada Moor').press('Enter')
    await has(/Wim Aster/)
    await press(page, '1 Enter')
    await has(/PIN of Wim Aster/)
    await type(page, '1357')
    await press(page, 'Enter')
    await page.getByText('The station is closed.').waitFor()
    await has(/Open the station close sheet/)
    expect(await barriers(page)).toEqual([])
    await picture(page, 'station-closed')
    const sheet = await saved(page, 'Alt+S')
    expect(sheet.name).toBe('station-close-26KRV-2026-11-14.pdf')
    const [words] = await pageTexts(sheet.bytes)
    for (const part of ['26KRVA', '26KRVC', 'Wim Aster', 'lost: wet roll'])
      expect(words).toContain(part)
    expect(shown.complaints).toEqual([])
  })
})
