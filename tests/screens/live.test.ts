import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { browserPath } from '../loopback/support/chromium.ts'
import { checkIn, leadPin, openStation } from '../support/desk.ts'
import { press, scan, signIn, type } from './support/hands.ts'
import { barriers } from './support/look.ts'
import { type ShownDesk, startDesk } from './support/start-desk.ts'

describe.skipIf(browserPath === undefined)('two windows on one desk', () => {
  let shown: ShownDesk
  beforeEach(async () => {
    const opened = await openStation()
    shown = await startDesk(opened.desk)
    await signIn(shown.page, 'Orla Vance', leadPin)
  })
  afterEach(() => shown.stop())

  test('an animal checked in anywhere stands in the line of every window at once', async () => {
    const other = await shown.openWindow()
    await signIn(other, 'Bo Quill')
    await checkIn(shown.desk)
    await shown.page.getByRole('button', { name: /A0001/ }).waitFor({ timeout: 2000 })
    await other.getByRole('button', { name: /A0001/ }).waitFor({ timeout: 2000 })
  })

  test('a check-in typed by a volunteer is in front of the lead before the volunteer looks up', async () => {
    const other = await shown.openWindow()
    await signIn(other, 'Bo Quill')
    await press(other, 'F3')
    await other.getByLabel('Hunter id', { exact: true }).waitFor()
    await scan(other, '204881733')
    await scan(other, 'MD0042117')
    await press(other, 'y Enter 2 Enter m Enter c Enter 3 Enter Enter Enter Enter')
    await type(other, '12')
    await press(other, 'Enter')
    await type(other, 'Dry Fork')
    await press(other, 'F12')
    const row = shown.page.getByRole('button', { name: /A0001/ })
    await row.waitFor({ timeout: 3000 })
    expect(await row.innerText()).toContain('mule deer, adult male')
  })

  test('an animal given to a sampler in one window leaves the line of the other', async () => {
    await checkIn(shown.desk)
    const other = await shown.openWindow()
    await signIn(other, 'Ines Tarr')
    const waiting = other.getByRole('list', { name: /^Animals waiting/ })
    await waiting.getByRole('button', { name: /A0001/ }).waitFor()
    await shown.page.getByRole('button', { name: /A0001/ }).focus()
    await press(shown.page, 'Enter')
    await shown.page.getByRole('dialog').waitFor()
    await press(shown.page, '1')
    await other.getByText('Nobody is waiting.').waitFor({ timeout: 2000 })
    expect((await shown.desk.ask('line', {})).working).toHaveLength(1)
  })

  test('each window has its own person: signing in at one changes nobody at the other', async () => {
    const other = await shown.openWindow()
    await signIn(other, 'Ines Tarr')
    await expect.poll(() => shown.page.getByText('Orla Vance').first().isVisible()).toBe(true)
    await press(other, 'Control+L')
    await other.getByRole('heading', { name: 'Who is working here now?' }).waitFor()
    expect(await shown.page.getByRole('navigation', { name: 'Screens' }).isVisible()).toBe(true)
  })

  test('a second window opens from the station screen, and the first stays signed in', async () => {
    await press(shown.page, 'F10')
    await shown.page.getByRole('heading', { name: /^Crew/ }).waitFor()
    const opening = shown.page.context().waitForEvent('page')
    await press(shown.page, 'Alt+T')
    const other = await opening
    await signIn(other, 'Ines Tarr')
    await press(shown.page, 'F2')
    await shown.page.getByText('Nobody is waiting.').waitFor()
    expect(await shown.page.getByText('Orla Vance').first().isVisible()).toBe(true)
  })

  test('when the desk stops answering, the screen says so and stays readable', async () => {
    await checkIn(shown.desk)
    await shown.page.getByRole('button', { name: /A0001/ }).waitFor()
    await shown.silence()
    await shown.page.getByText('The desk is not answering.').waitFor()
    expect(await shown.page.getByRole('button', { name: /A0001/ }).isVisible()).toBe(true)
    expect(await barriers(shown.page)).toEqual([])
    await shown.page.getByRole('button', { name: /A0001/ }).focus()
    await press(shown.page, 'l')
    await shown.page.getByRole('dialog').waitFor()
    await type(shown.page, 'could not wait longer')
    await press(shown.page, 'Enter')
    await shown.page.getByText(/not certain that this was kept/).waitFor()
  })
})
