/** The volunteer at the label printer: pre-printing, a jam, a reprint, stocks and printers. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { type KitNumber, numberParts, sampleNumber } from '../../shared-types/sample-number.ts'
import { browserPath } from '../loopback/support/chromium.ts'
import { leadPin, openStation } from '../support/desk.ts'
import { type PersonKeys, personKeys } from './person-keys.ts'
import { focused, press, scan, signIn } from './support/hands.ts'
import { barriers, picture } from './support/look.ts'
import { type ShownDesk, startDesk } from './support/start-desk.ts'

describe.skipIf(browserPath === undefined)('labels', () => {
  let shown: ShownDesk
  let keys: PersonKeys

  beforeEach(async () => {
    const opened = await openStation({ blankLabels: 5000 })
    shown = await startDesk(opened.desk)
    await signIn(shown.page, 'Orla Vance', leadPin)
    await press(shown.page, 'F6')
    await expect.poll(() => focused(shown.page)).toContain('Give out')
    keys = personKeys(shown.page)
  })
  afterEach(() => shown.stop())

  const dialog = (name: string) => shown.page.getByRole('dialog', { name })
  const labelsOf = async (kit: KitNumber) =>
    (await shown.desk.ask('kits', {})).reserved.find((each) => each.kit === kit)?.labels ?? []
  const part = (kit: KitNumber, letter: 'L' | 'R') => {
    const { desk, serial } = numberParts(kit)
    return sampleNumber(desk, serial, letter)
  }

  test('of 300 kits are one PDF; after a jam they go on from the exact label, by one scan', async () => {
    await shown.page.getByLabel('Number kits for whoever comes').focus()
    await keys.type('300')
    await keys.press('Enter')
    await shown.page.getByRole('progressbar', { name: 'Labels made' }).waitFor({ timeout: 60_000 })
    await shown.page.getByText('300 kits numbered.').first().waitFor({ timeout: 60_000 })
    await shown.page.getByText(/labels-26KRVA0001K.-to-26KRVA0300K.\.pdf/).waitFor()
    const { reserved } = await shown.desk.ask('kits', {})
    expect(reserved).toHaveLength(300)
    const kit = reserved[149]?.kit
    if (!kit) throw new Error('300 kits were numbered')

    await shown.page.getByRole('button', { name: 'Jam: go on' }).focus()
    await keys.press('Enter')
    await dialog('Go on after a jam').waitFor()
    await expect.poll(() => focused(shown.page)).toContain('The last good label')
    expect(await barriers(shown.page)).toEqual([])
    await scan(shown.page, part(kit, 'L'))
    await dialog('Go on after a jam')
      .getByText(/the next is the right bag label/)
      .waitFor()
    await expect.poll(() => focused(shown.page)).toContain('How many came out ruined')
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'labels-jam')
    await keys.press('Control+A')
    await keys.type('1')
    await keys.press('Enter')
    await dialog('Go on after a jam').waitFor({ state: 'detached', timeout: 60_000 })
    await shown.page
      .getByText(/1 of them reprints: destroy the ruined ones/)
      .first()
      .waitFor()

    const right = (await labelsOf(kit)).filter(({ number }) => number === part(kit, 'R'))
    expect(right.map(({ copy, fate }) => [copy, fate])).toEqual([
      [1, 'void'],
      [2, 'printed'],
    ])
    expect(shown.complaints).toEqual([])
  })

  test('a jam inside a data card asks which label of the card was the last', async () => {
    const printed = await shown.desk.ask('labels.printKits', {
      for: { whom: 'reserve', count: 2 },
      stock: 'roll-51x25',
    })
    const kit = printed.kits[0] as KitNumber
    await shown.page.getByText('Numbered kits: 2 reserved').waitFor()
    await shown.page.getByRole('button', { name: 'Jam: go on' }).focus()
    await keys.press('Enter')
    await expect.poll(() => focused(shown.page)).toContain('The last good label')
    await scan(shown.page, kit)
    const which = dialog('Go on after a jam').getByRole('radio', { name: /data card .*, 1 of 3/ })
    await which.focus()
    await keys.press('Space')
    await dialog('Go on after a jam')
      .getByText(/the next is the data card .*, 2 of 3/)
      .waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'labels-jam-card')
    await keys.press('Enter')
    await dialog('Go on after a jam').waitFor({ state: 'detached' })
    expect((await labelsOf(kit)).every(({ fate }) => fate === 'printed')).toBe(true)
  })

  test('a label that is no good as a start of the rest is told, and the dialog stays', async () => {
    await shown.page.getByRole('button', { name: 'Jam: go on' }).focus()
    await keys.press('Enter')
    await expect.poll(() => focused(shown.page)).toContain('The last good label')
    await scan(shown.page, sampleNumber('26KRTA' as never, 4, 'L'))
    await dialog('Go on after a jam')
      .getByText(/belongs to station KRT/)
      .waitFor()
    await keys.type('26krva0042l9')
    await keys.press('Enter')
    await dialog('Go on after a jam')
      .getByText(/does not fit the others/)
      .waitFor()
    expect(await shown.page.getByLabel('The last good label').inputValue()).toBe('26-KRV-A0042-L-9')
  })

  test('the table of stocks is looked at, and a stock of one’s own is described and printed on', async () => {
    await shown.page.getByRole('button', { name: 'Table of stocks' }).focus()
    await keys.press('Enter')
    await shown.page.getByRole('rowheader', { name: /^A4 sheet, 21 labels/ }).waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'labels-stocks')
    await expect.poll(() => focused(shown.page)).toContain('Describe another stock')
    await keys.press('Enter')
    await shown.page.getByLabel('Label width, mm').waitFor()
    await shown.page.getByLabel('Label width, mm').fill('20')
    await shown.page.getByLabel('Label height, mm').fill('10')
    await dialog('Label stocks')
      .getByText(/does not fit roll, 20 × 10 mm/)
      .waitFor()
    await shown.page.getByLabel('Label width, mm').fill('70')
    await shown.page.getByLabel('Label height, mm').fill('30,5')
    await dialog('Label stocks').getByText('One kit takes').waitFor()
    await shown.page.getByRole('img', { name: /^left bag label/ }).waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'labels-stock-form')
    const width = await shown.page
      .getByRole('img', { name: /^left bag label/ })
      .evaluate((label) => label.getBoundingClientRect().width)
    // 70 mm at the 96 dots an inch of a style sheet.
    expect(width).toBeCloseTo((70 / 25.4) * 96, 0)
    await shown.page.getByLabel('Label width, mm').focus()
    await keys.press('Enter')
    await shown.page.getByRole('rowheader', { name: 'roll, 70 × 30.5 mm' }).waitFor()
    await keys.press('Escape')

    await shown.page.getByRole('button', { name: 'Stock and printer' }).focus()
    await keys.press('Enter')
    await dialog('Stocks and printers of this laptop').waitFor()
    await shown.page.getByRole('radio', { name: /roll, 70 × 30\.5 mm/ }).click()
    await expect
      .poll(async () => (await shown.desk.ask('printing', {})).chosen.kits.stock)
      .toBe('roll-70x30.5-203')
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'labels-set-up')
    await keys.press('Escape')
    await shown.page.getByText(/A kit takes \d+ of them/).waitFor()
    await picture(shown.page, 'labels-loaded')
    expect(shown.complaints).toEqual([])
  })

  test('impossible sizes are refused at their field', async () => {
    await shown.page.getByRole('button', { name: 'Table of stocks' }).focus()
    await keys.press('Enter')
    await shown.page.getByRole('button', { name: /^Correct A4 sheet, 21/ }).click()
    await shown.page.getByLabel('Labels across').fill('5')
    await shown.page.getByLabel('Labels across').focus()
    await keys.press('Enter')
    await shown.page
      .getByText(/5 labels across need .* mm, and the paper is 210 mm wide/)
      .first()
      .waitFor()
    await expect.poll(() => focused(shown.page)).toContain('Labels across')
    expect(await barriers(shown.page)).toEqual([])
  })
})
