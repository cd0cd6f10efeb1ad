import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { kitAccountKey } from '../../shared-types/kit.ts'
import { bagNumber, numberParts } from '../../shared-types/sample-number.ts'
import { browserPath } from '../loopback/support/chromium.ts'
import { type Crew, leadPin, openStation } from '../support/desk.ts'
import { type PersonKeys, personKeys } from './person-keys.ts'
import { focused, press, scan, signIn } from './support/hands.ts'
import { barriers, picture } from './support/look.ts'
import { type ShownDesk, startDesk } from './support/start-desk.ts'

describe.skipIf(browserPath === undefined)('kits', () => {
  let shown: ShownDesk
  let crew: Crew
  let keys: PersonKeys

  /** 100 kits came, 20 are with the sampler; the lead stands at the kits screen. */
  beforeEach(async () => {
    const opened = await openStation()
    crew = opened.crew
    shown = await startDesk(opened.desk)
    await signIn(shown.page, 'Orla Vance', leadPin)
    await press(shown.page, 'F6')
    await expect.poll(() => focused(shown.page)).toContain('Give out')
    keys = personKeys(shown.page)
  })
  afterEach(() => shown.stop())

  test('the ledgers open on the kits, and each balance on its entries', async () => {
    await press(shown.page, 'Alt+G')
    const ledgers = shown.page.getByRole('dialog', { name: 'Ledgers' })
    await ledgers.waitFor()
    await ledgers.getByRole('button', { name: /in stock/ }).click()
    await ledgers.getByRole('table', { name: 'Entries behind in stock' }).waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'kits-ledgers')
    await press(shown.page, 'Escape')
    await ledgers.waitFor({ state: 'detached' })
  })

  test('kits given to another desk of the station are neither missing nor spoiled', async () => {
    await move('o', 'Kits given to another desk of this station', '', '5', 'desk C ran out')
    await expect.poll(async () => (await ledger())['other-desk']).toBe(5)
    expect((await ledger()).stock).toBe(75)
  })

  const ledger = async () => {
    const { balances } = await shown.desk.ask('kits', {})
    return Object.fromEntries(balances.map(({ key, count }) => [key, count]))
  }
  const dialog = (name: string) => shown.page.getByRole('dialog', { name })
  const inHands = () => kitAccountKey({ in: 'hands', person: crew.sampler })

  /** Opens a dialog, chooses the person by the key on their tile, types a count and why. */
  async function move(key: string, title: string, person: string, count: string, why = '') {
    await keys.press(key)
    await dialog(title).waitFor()
    if (person !== '') {
      const tile = dialog(title).getByRole('radio', { name: person })
      await keys.press((await tile.getAttribute('aria-keyshortcuts')) ?? 'none', 'Tab')
    }
    await keys.type(count)
    if (why !== '') {
      await keys.press('Tab')
      await keys.type(why)
    }
    await keys.press('Enter')
  }

  test('are given out, taken back and spoiled by keyboard, and every kit stays in one account', async () => {
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'kits')
    await move('g', 'Give kits to a sampler', 'Ines Tarr', '10')
    await dialog('Give kits to a sampler').waitFor({ state: 'detached' })
    expect(await ledger()).toMatchObject({ stock: 70, [inHands()]: 30, delivered: 100 })
    await shown.page.locator('.in-stock', { hasText: '70' }).waitFor()

    await move('b', 'Take kits back into stock', 'Ines Tarr', '4')
    await dialog('Take kits back into stock').waitFor({ state: 'detached' })
    await move('s', 'Kits spoiled: torn, wet or dropped', 'in stock', '3', 'rain got in')
    await dialog('Kits spoiled: torn, wet or dropped').waitFor({ state: 'detached' })
    await move('d', 'Kits delivered to the station', '', '50', 'from the depot')
    await dialog('Kits delivered to the station').waitFor({ state: 'detached' })

    const after = await ledger()
    expect(after).toMatchObject({ stock: 121, [inHands()]: 26, spoiled: 3, delivered: 150 })
    const { delivered, ...rest } = after
    expect(Object.values(rest).reduce((sum, count) => sum + count, 0)).toBe(delivered)
    expect(await focused(shown.page)).toContain('Give out')
    expect(shown.complaints).toEqual([])
  })

  test('more than there are is refused at the field, and nothing moves', async () => {
    await move('g', 'Give kits to a sampler', 'Ines Tarr', '900')
    await dialog('Give kits to a sampler').getByText('There are only 80 there').waitFor()
    expect(await focused(shown.page)).toContain('How many')
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'kits-refused')
    expect(await ledger()).toMatchObject({ stock: 80, [inHands()]: 20 })
  })

  test('are numbered before dawn, and all their labels are one PDF', async () => {
    await shown.page.getByLabel('Number kits for whoever comes').focus()
    await keys.type('60')
    await keys.press('Enter')
    await shown.page.getByText('60 kits numbered.').first().waitFor()
    await shown.page.getByText(/labels-26KRVA0001K.-to-26KRVA0060K.\.pdf/).waitFor()
    const { reserved } = await shown.desk.ask('kits', {})
    expect(reserved).toHaveLength(60)
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'kits-numbered')
  })

  test('the scan of any label opens its kit; a torn label is reprinted, a lost one is void', async () => {
    const { kits } = await shown.desk.ask('labels.printKits', {
      for: { whom: 'reserve', count: 2 },
      stock: 'roll-51x25',
    })
    const [kit] = kits
    if (!kit) throw new Error('two kits were asked for')
    const { desk, serial } = numberParts(kit)
    const left = bagNumber(desk, serial, 'L')
    await shown.page.getByText('Numbered kits: 2 reserved').first().waitFor()
    await scan(shown.page, bagNumber(desk, serial, 'R'))
    await dialog('Kit 26-KRV').waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'kit')

    const button = (name: string) => shown.page.getByRole('button', { name, exact: true })
    await button('Reprint the left bag label').focus()
    await keys.press('Enter')
    await dialog('Reprint 26-KRV').waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'kit-reprint')
    await keys.press('1', 'Enter')
    await dialog('Reprint 26-KRV').getByText('is still good').waitFor()
    await expect.poll(() => focused(shown.page)).toContain('I have destroyed the old label')
    expect(await barriers(shown.page)).toEqual([])
    await keys.press('d', 'Enter')
    await dialog('Kit 26-KRV').getByText('copy 2').waitFor()
    await button('Void the right bag label').focus()
    await keys.press('Enter')
    await dialog('Void 26-KRV').waitFor()
    await expect.poll(() => focused(shown.page)).toContain('torn')
    await keys.press('5')
    await expect
      .poll(() => dialog('Void 26-KRV').getByRole('radio', { checked: true }).count())
      .toBe(1)
    await keys.press('Enter')
    await dialog('Void 26-KRV').waitFor({ state: 'detached' })

    const { reserved } = await shown.desk.ask('kits', {})
    const labels = reserved.find((each) => each.kit === kit)?.labels ?? []
    const fates = (number: string) =>
      labels.filter((each) => each.number === number).map(({ copy, fate }) => [copy, fate])
    expect(fates(left)).toEqual([
      [1, 'void'],
      [2, 'printed'],
    ])
    expect(fates(bagNumber(desk, serial, 'R'))).toEqual([[1, 'void']])

    // The focus is back on the button it left, so the dialog's own key works.
    await expect.poll(() => focused(shown.page)).toMatch(/^Void/)
    await keys.press('s')
    await dialog('is spoiled').waitFor()
    await keys.type('fell in the creek')
    await keys.press('Enter')
    await expect.poll(async () => (await ledger()).spoiled).toBe(1)
  })
})
