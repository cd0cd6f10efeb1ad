import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { grouped } from '../../shared-types/sample-number.ts'
import { browserPath } from '../loopback/support/chromium.ts'
import { leadPin } from '../support/desk.ts'
import { type Delivered, delivered } from '../support/delivered.ts'
import { focused, press, signIn, type } from './support/hands.ts'
import { barriers, picture } from './support/look.ts'
import { type ShownDesk, startDesk } from './support/start-desk.ts'

// One morning at the office, in the order in which it happens: each test goes on where the last ended.
describe.skipIf(browserPath === undefined)('results, from the file to the hunter', () => {
  let shown: ShownDesk
  let at: Delivered

  beforeAll(async () => {
    at = await delivered(4)
    shown = await startDesk(at.desk)
    await signIn(shown.page, 'Orla Vance', leadPin)
    await press(shown.page, 'F11')
    await heading('Results').waitFor()
  }, 120_000)
  afterAll(() => shown?.stop())

  const heading = (name: string | RegExp) => shown.page.getByRole('heading', { name })
  const label = (name: string | RegExp) => shown.page.getByLabel(name)
  const animal = (place: number) => {
    const found = at.animals[place]
    if (!found) throw new Error('no such animal')
    return found
  }

  /** A part of the screen by its key: the list of parts has the focus first. */
  async function goTo(digit: string, name: string | RegExp) {
    await shown.page
      .getByRole('navigation', { name: 'Parts of results' })
      .getByRole('button')
      .first()
      .focus()
    await expect.poll(() => focused(shown.page)).toContain('Overview')
    await press(shown.page, digit)
    await heading(name).first().waitFor()
  }

  const file = () =>
    [
      'Basin Animal Disease Laboratory;;;',
      'Sample ID;Result;Method;Date',
      `${grouped(animal(0).left)};Not Detected;ELISA;12/2/2026`,
      `${grouped(animal(0).right)};Not Detected;ELISA;12/2/2026`,
      `${grouped(animal(1).left)};DETECTED;ELISA;12/2/2026`,
      `${grouped(animal(2).left)};Unsuitable;ELISA;12/2/2026`,
      `${grouped(animal(2).right)};Unsuitable;ELISA;12/2/2026`,
      'Total: 5;;;',
      '',
    ].join('\r\n')

  test('the screen opens on its list of parts and says that nothing came in yet', async () => {
    await shown.page.getByText('No laboratory file was read in yet.').waitFor()
    await expect.poll(() => focused(shown.page)).toContain('Overview')
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'results-empty')
  })

  test('a file is chosen, and the person says which column is what and how days are written', async () => {
    await goTo('2', 'Read results in')
    await label(/^Its file/).setInputFiles({
      name: 'report-1187.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(file()),
    })
    await shown.page.getByRole('group', { name: 'First lines of the file' }).waitFor()
    await expect.poll(() => label('Line of the headings').inputValue()).toBe('2')
    await label('Column of the sample number').selectOption({ label: '1: Sample ID' })
    await label('Column of the result').selectOption({ label: '2: Result' })
    await label('Column of the test method').selectOption({ label: '3: Method' })
    await label('Column of the test day').selectOption({ label: '4: Date' })
    const order = shown.page.getByRole('group', { name: /^How it writes a day/ })
    await order.getByRole('radio').first().focus()
    await press(shown.page, 'a')
    await label('“Not Detected” (2 rows)').selectOption('not-detected')
    await label('“DETECTED” (1 row)').selectOption('detected')
    await label('“Unsuitable” (2 rows)').selectOption('unsuitable')
    await shown.page.getByRole('table', { name: 'What the file brings' }).waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'results-mapping')
  })

  test('it is read in; what is in doubt comes up at once and is settled by keyboard', async () => {
    await shown.page.getByRole('button', { name: /Read the file in/ }).waitFor()
    await press(shown.page, 'Alt+k')
    await heading(/^Rows in doubt/).waitFor()
    const list = shown.page.getByRole('list', { name: 'Rows in doubt' })
    await expect.poll(() => list.getByRole('button').count()).toBe(3)
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'results-doubts')
    await shown.page.getByRole('button', { name: /all 2 such rows/ }).waitFor()
    await press(shown.page, 'Alt+a')
    await expect.poll(() => list.getByRole('button').count()).toBe(1)
    await heading('Not a sample number').waitFor()
    await shown.page.getByRole('group', { name: 'Settle it' }).getByRole('radio').first().focus()
    await press(shown.page, 'l')
    await label('Why, in a few words').focus()
    await expect.poll(() => focused(shown.page)).toContain('Why')
    await type(shown.page, 'a total')
    await press(shown.page, 'Enter')
    await shown.page.getByText('No row waits for a person.').waitFor()
  })

  test('the detection leads the follow-up list, with the cautions and the steps', async () => {
    await goTo('5', /^To follow up/)
    await heading(grouped(animal(1).animal)).waitFor()
    await shown.page.getByText(/Do not eat meat from an animal that tests positive/).waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'results-follow-up')
    await shown.page.getByRole('button', { name: /^Done: The agency's veterinarian/ }).click()
    await expect.poll(() => focused(shown.page)).toContain('In a few words')
    await type(shown.page, 'by phone')
    await press(shown.page, 'Enter')
    await shown.page.getByText(/^done:/).waitFor()
    await press(shown.page, 'Alt+t')
    await heading(`Told about ${grouped(animal(1).animal)}`).waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await press(shown.page, 'Enter')
    await shown.page.getByText('Recorded: 1 told by phone.').first().waitFor()
  })

  test('hunters of the other results get letters, and each is recorded as told', async () => {
    await goTo('4', /^Tell hunters/)
    const whose = shown.page.getByRole('group', { name: 'Whose result is' })
    await whose.getByRole('radio').first().focus()
    await press(shown.page, 'a')
    await shown.page.getByRole('table', { name: 'Animals of this result' }).waitFor()
    await shown.page.getByText('hunter0@example.org').waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'results-tell')
    const opened = shown.page.context().waitForEvent('page')
    await press(shown.page, 'Alt+l')
    await (await opened).close()
    await press(shown.page, 'Alt+t')
    await heading(/^Told about/).waitFor()
    await press(shown.page, 'Enter')
    await shown.page.getByText('Nobody is on this list.').waitFor()
    const { words } = await at.desk.ask('results', {})
    expect(words.find(({ word }) => word === 'not-detected')).toMatchObject({
      animals: 1,
      untold: 0,
    })
  })

  test('a hunter’s number shows the result and no name', async () => {
    await goTo('6', 'Look a result up')
    await expect.poll(() => focused(shown.page)).toContain("Animal number from the hunter's stub")
    await type(shown.page, grouped(animal(1).animal))
    await press(shown.page, 'Enter')
    await shown.page.getByText(/The result is: detected/).waitFor()
    expect(await shown.page.textContent('main')).not.toMatch(/Hunter Number|555-01|example\.org/)
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'results-look-up')
  })

  test('overdue bags, rules, training and contacts each have their place', async () => {
    await goTo('7', /^Without a result/)
    await shown.page.getByRole('table', { name: /^Bags without a result/ }).waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'results-overdue')
    await goTo('9', 'Rules')
    await label(/^Days after which/).fill('14')
    await press(shown.page, 'Enter')
    await expect.poll(async () => (await at.desk.ask('results', {})).overdue).toBe(3)
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'results-rules')
    await goTo('0', /^Unsuitable tissue/)
    await shown.page.getByRole('table', { name: /^Unsuitable share/ }).waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'results-training')
  })

  test('contacts of hunters who wait are erased only if a lead stands by it, and a certificate follows', async () => {
    await goTo('8', 'Contacts kept')
    await shown.page.getByRole('table', { name: /^Contacts by the day/ }).waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'results-contacts')
    await press(shown.page, 'Alt+e')
    await label('Your PIN').fill(leadPin)
    await press(shown.page, 'Enter')
    await label(/Erase them all the same/).check()
    await label('Your PIN').fill(leadPin)
    await press(shown.page, 'Enter')
    await shown.page.getByText(/4 contacts erased/).waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await shown.page
      .getByRole('button', { name: /Certificate/ })
      .first()
      .waitFor()
    const opened = shown.page.context().waitForEvent('page')
    await press(shown.page, 'Alt+c')
    await (await opened).close()
    await press(shown.page, 'Escape')
    await heading(/^Erased before/).waitFor()
    await picture(shown.page, 'results-erased')
  })

  test('fits a small laptop without scrolling the page, and can be read at 200% zoom', async () => {
    const overflow = () =>
      shown.page.evaluate(() => ({
        down: document.documentElement.scrollHeight - window.innerHeight,
        across: document.documentElement.scrollWidth - window.innerWidth,
      }))
    for (const [digit, name] of [
      ['1', 'Animals by result'],
      ['4', /^Tell hunters/],
      ['5', /^To follow up/],
    ] as const) {
      await goTo(digit, name)
      expect(await overflow()).toEqual({ down: 0, across: 0 })
    }
    await shown.page.setViewportSize({ width: 683, height: 384 })
    expect((await overflow()).across).toBe(0)
    await picture(shown.page, 'results-zoom-200')
    expect(shown.complaints).toEqual([])
  })
})
