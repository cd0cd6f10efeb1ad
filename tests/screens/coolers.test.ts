import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { bagNumber, DeskId, grouped } from '../../shared-types/sample-number.ts'
import { browserPath } from '../loopback/support/chromium.ts'
import { openCooler } from '../support/desk.ts'
import { pageTexts } from '../print/read-pdf.ts'
import { leadPin } from '../support/desk.ts'
import { type Afternoon, afternoon, saved } from './support/dusk.ts'
import { focused, press, scan, signIn, type } from './support/hands.ts'
import { barriers, picture } from './support/look.ts'
import { type ShownDesk, startDesk } from './support/start-desk.ts'

describe.skipIf(browserPath === undefined)('the coolers', () => {
  let shown: ShownDesk
  let day: Afternoon

  /** A lead at the coolers, four bags on the bench, one cooler open. */
  beforeEach(async () => {
    day = await afternoon()
    shown = await startDesk(day.desk)
    await signIn(shown.page, 'Orla Vance', leadPin)
    await press(shown.page, 'F7')
    await shown.page.getByRole('heading', { name: 'Filling North 1' }).waitFor()
  })
  afterEach(() => shown.stop())

  const bag = (place: number) => day.bags[place] ?? expect.fail('four bags are on the bench')
  const lastScans = () =>
    shown.page.getByRole('list', { name: /^Last scans/ }).getByRole('listitem')
  const count = () => shown.page.locator('.cooler-count strong').innerText()
  const inside = async () => (await day.desk.ask('cooler', { cooler: day.cooler })).bags
  const coolerNow = async () => (await day.desk.ask('cooler', { cooler: day.cooler })).cooler
  const alerts = () => shown.page.getByRole('alert').filter({ hasText: /Not done|Wrong label/ })

  test('bags on the bench stand oldest first, each with its own end of the hold clock', async () => {
    const bench = shown.page.getByRole('region', { name: 'Still on the bench: 4' })
    const rows = bench.getByRole('listitem')
    expect(await rows.count()).toBe(4)
    // Sealed 06:01 on Saturday, and this station holds for 48 hours (the day or two that chilled
    // tissue is commonly kept; common practice, no source).
    const first = await rows.first().innerText()
    expect(first).toContain(grouped(bag(0)))
    expect(first).toMatch(/freeze or deliver by\s+Mon 16 Nov, 06:01 MST/)
    expect(await rows.last().innerText()).toContain('06:06 MST')
    expect(await barriers(shown.page)).toEqual([])
  })

  test('bag after bag goes in by scanner alone, wherever the focus is', async () => {
    for (const each of day.bags) await scan(shown.page, each)
    await expect.poll(count).toBe('4')
    expect((await inside()).map((each) => each.bag).toSorted()).toEqual([...day.bags].toSorted())
    expect(await lastScans().first().innerText()).toContain(grouped(bag(3)))
    await shown.page.getByText('every sealed bag is in a cooler').first().waitFor()
    // Nothing of the scans was left behind in the field that had the focus.
    expect(await shown.page.getByLabel('Bag or cooler').inputValue()).toBe('')
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'coolers')
    expect(shown.complaints).toEqual([])
  })

  test('a bag scanned twice is refused, and the refusal stays in sight behind the next good scan', async () => {
    await scan(shown.page, bag(0))
    await scan(shown.page, bag(0))
    await alerts().filter({ hasText: 'already in North 1' }).waitFor()
    await scan(shown.page, bag(1))
    await expect.poll(count).toBe('2')
    const [latest, before] = await lastScans().allInnerTexts()
    expect(latest).toContain(grouped(bag(1)))
    expect(before).toMatch(/not done/)
    expect(before).toContain('already in North 1')
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'coolers-twice')
  })

  test("another station's bag is refused, and so is one that nobody has sealed", async () => {
    await scan(shown.page, bagNumber(DeskId.parse('26MXJC'), 1, 'L'))
    await alerts().waitFor()
    expect(await lastScans().first().innerText()).toMatch(/not done\s+26-MXJ-C0001-L/)
    await scan(shown.page, bagNumber(DeskId.parse('26KRVA'), 77, 'R'))
    await alerts().filter({ hasText: '26-KRV-A0077-R' }).waitFor()
    expect(await inside()).toEqual([])
    expect(await count()).toBe('0')
  })

  test('a misread label is caught by its check character, before the desk is even asked', async () => {
    const misread = bag(0).slice(0, -1) + (bag(0).endsWith('A') ? 'B' : 'A')
    await scan(shown.page, misread)
    await alerts().filter({ hasText: 'does not fit the others' }).waitFor()
    expect(await inside()).toEqual([])
  })

  test('between two open coolers nobody guesses: a scan of the label chooses', async () => {
    const south = await openCooler(day.desk, 'South 2')
    await press(shown.page, 'F2')
    await press(shown.page, 'F7')
    await shown.page.getByRole('heading', { name: 'Choose a cooler to fill' }).waitFor()
    await scan(shown.page, bag(0))
    await alerts().filter({ hasText: 'No cooler is chosen.' }).waitFor()
    await scan(shown.page, south)
    await scan(shown.page, bag(0))
    await shown.page.getByRole('heading', { name: 'Filling South 2' }).waitFor()
    await expect.poll(count).toBe('1')
    expect((await day.desk.ask('cooler', { cooler: south })).bags).toHaveLength(1)
  })

  test('the arrow keys choose a cooler as well, and the next scan goes there', async () => {
    await openCooler(day.desk, 'South 2')
    await shown.page.getByRole('radio', { name: /North 1/ }).focus()
    await press(shown.page, 'Space ArrowDown')
    await shown.page.getByRole('heading', { name: 'Filling South 2' }).waitFor()
    expect(await focused(shown.page)).toContain('South 2')
    await scan(shown.page, bag(0))
    await expect.poll(count).toBe('1')
    expect(await inside()).toEqual([])
  })

  test('a cooler is opened, and its label printed, by keyboard', async () => {
    await press(shown.page, 'Alt+A')
    await shown.page.getByRole('dialog', { name: 'Open a cooler' }).waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'coolers-open')
    await press(shown.page, 'Enter')
    await expect.poll(() => focused(shown.page)).toBe('Name')
    await type(shown.page, 'White chest')
    await press(shown.page, 'Tab')
    await press(shown.page, 'ArrowRight')
    await press(shown.page, 'Enter')
    await shown.page.getByRole('heading', { name: 'Filling White chest' }).waitFor()
    await press(shown.page, 'Alt+P')
    await shown.page.getByRole('button', { name: 'Save the PDF' }).waitFor()
    const label = await saved(shown.page, 'Alt+S')
    const [text = ''] = await pageTexts(label.bytes)
    expect(text).toContain('White chest')
    const opened = (await day.desk.ask('coolers', {})).coolers.at(-1)
    expect(opened).toMatchObject({ name: 'White chest', keeping: 'frozen', capacity: null })
  })

  test('a temperature typed in °F is told in °C, shown in both, and out of limits it gives advice', async () => {
    await press(shown.page, 'Alt+T')
    await type(shown.page, '52F')
    // 52 °F = (52 − 32)/1.8 = 11.1 °C: NIST Special Publication 811 (2008), appendix B.8, from memory.
    await shown.page.getByText('= 11.1 °C (52 °F)').waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await press(shown.page, 'Enter')
    await shown.page.getByRole('dialog', { name: 'North 1 is out of its limits' }).waitFor()
    await shown.page.getByText('Too warm.').first().waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'coolers-too-warm')
    await press(shown.page, 'Enter')
    await shown.page.getByRole('dialog').waitFor({ state: 'detached' })
    expect((await coolerNow()).lastReading).toMatchObject({ celsius: 11.1, excursion: true })
    await shown.page.getByText('out of limits').first().waitFor()
  })

  test('what is no temperature is not told to the desk', async () => {
    await press(shown.page, 'Alt+T')
    await type(shown.page, 'cold')
    await press(shown.page, 'Enter')
    await shown.page.getByText('That is not a temperature.').first().waitFor()
    expect(await focused(shown.page)).toBe('Temperature')
    expect((await coolerNow()).lastReading).toBeNull()
  })

  test('a bag is taken out with a reason, and is back on the bench', async () => {
    await scan(shown.page, bag(0))
    await expect.poll(count).toBe('1')
    await shown.page.getByRole('button', { name: `Take out ${bag(0)}` }).focus()
    await press(shown.page, 'Enter Enter')
    await shown.page.getByText('say why in a few words').first().waitFor()
    await type(shown.page, 'belongs in the freezer')
    await press(shown.page, 'Enter')
    await shown.page.getByRole('region', { name: 'Still on the bench: 4' }).waitFor()
    expect(await inside()).toEqual([])
  })

  test('once a cooler is chosen the focus is back where bags are scanned', async () => {
    await openCooler(day.desk, 'South 2')
    await shown.page.getByRole('radio', { name: /South 2/ }).focus()
    await press(shown.page, 'Space Enter')
    await shown.page.getByRole('heading', { name: 'Filling South 2' }).waitFor()
    await expect.poll(() => focused(shown.page)).toBe('Bag or cooler')
  })

  test('before the seal goes on, a warm last reading and bags left on the bench are told', async () => {
    await day.desk.ask('bag.place', { bag: bag(0), cooler: day.cooler })
    await day.desk.ask('cooler.read', { cooler: day.cooler, celsius: 9 })
    await press(shown.page, 'Alt+C')
    const dialog = shown.page.getByRole('dialog', { name: 'Seal North 1' })
    await dialog.getByText(/The last reading was/).waitFor()
    await dialog.getByText(/3 sealed bags are still on the bench/).waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'coolers-seal-warned')
  })

  test('a cooler is locked up for the night, and its bags are in custody under lock', async () => {
    await scan(shown.page, bag(0))
    await expect.poll(count).toBe('1')
    await press(shown.page, 'Alt+Q')
    const dialog = shown.page.getByRole('dialog', { name: /^How North 1 is kept/ })
    await dialog.waitFor()
    await expect.poll(() => focused(shown.page)).toContain('Under lock')
    expect(await barriers(shown.page)).toEqual([])
    await press(shown.page, 'Tab')
    await type(shown.page, 'truck 3, key with Orla')
    await picture(shown.page, 'coolers-locked')
    await press(shown.page, 'Enter')
    await dialog.waitFor({ state: 'detached' })
    const { steps, holes } = await day.desk.ask('custody', { bag: bag(0) })
    expect(steps.at(-1)).toMatchObject({ by: 'locked' })
    expect(holes).toEqual([])
  })

  test('what is due next says how many of how many bags, and by when', async () => {
    const due = shown.page.getByRole('region', { name: 'Freeze or deliver next' })
    await expect.poll(() => due.innerText()).toMatch(/Bench: 4 of 4 bags/)
    expect(await due.innerText()).toContain('due by')
  })

  test('a seal that was broken is never put on again', async () => {
    await scan(shown.page, bag(0))
    await day.desk.ask('cooler.seal', { cooler: day.cooler, seal: 'WX-44871' })
    await day.desk.ask('seal.break', { cooler: day.cooler, reason: 'ice' })
    await shown.page.getByRole('heading', { name: 'Filling North 1' }).waitFor()
    await press(shown.page, 'Alt+C')
    await scan(shown.page, 'WX-44871')
    await shown.page
      .getByText(/a broken seal proves nothing/)
      .first()
      .waitFor()
  })

  test('a sealed cooler takes nothing until its seal is broken with a reason', async () => {
    await scan(shown.page, bag(0))
    await expect.poll(count).toBe('1')
    await press(shown.page, 'Alt+C')
    await shown.page.getByRole('dialog', { name: 'Seal North 1' }).waitFor()
    expect(await barriers(shown.page)).toEqual([])
    // A seal's own barcode is scanned into its field, and its Enter seals.
    await scan(shown.page, 'WX-44871')
    await shown.page.getByRole('heading', { name: 'Sealed: North 1' }).waitFor()
    expect(await coolerNow()).toMatchObject({ state: 'sealed', seal: 'WX-44871' })
    await scan(shown.page, bag(1))
    await alerts().filter({ hasText: 'sealed with WX-44871' }).waitFor()
    expect(await inside()).toHaveLength(1)
    await picture(shown.page, 'coolers-sealed')
    await press(shown.page, 'Alt+B')
    await type(shown.page, 'ice to be changed')
    await press(shown.page, 'Enter')
    await shown.page.getByRole('heading', { name: 'Filling North 1' }).waitFor()
    await scan(shown.page, bag(1))
    await expect.poll(count).toBe('2')
  })

  test('a volunteer fills coolers, and sees why the seal is not theirs to break', async () => {
    await day.desk.ask('bag.place', { bag: bag(0), cooler: day.cooler })
    await day.desk.ask('cooler.seal', { cooler: day.cooler, seal: 'WX-44871' })
    const window = await shown.openWindow()
    await signIn(window, 'Bo Quill')
    await press(window, 'F7')
    await scan(window, day.cooler)
    const breaking = window.getByRole('button', { name: /^Break the seal/ })
    await breaking.waitFor()
    expect(await breaking.getAttribute('aria-disabled')).toBe('true')
    expect(await breaking.innerText()).toContain('only the lead breaks a seal')
    await press(window, 'Alt+B')
    expect(await window.getByRole('dialog').count()).toBe(0)
  })

  test('the cautions of dry ice stand there, and defer to the carrier and local rules', async () => {
    // 49 CFR 173.217: packages of dry ice must release the gas.
    const caution = await shown.page.getByRole('complementary').innerText()
    expect(caution).toMatch(/lets gas out/)
    expect(caution).toMatch(/gloves/)
    expect(caution).toMatch(/carrier, the laboratory and local rules ask comes first/)
  })
})
