import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { discrepancyWords } from '../../shared-types/discrepancy.ts'
import { browserPath } from '../loopback/support/chromium.ts'
import { disputedLogs, eight } from '../merge/disputed.ts'
import { TestDesk } from '../support/desk.ts'
import { focused, press, type } from './support/hands.ts'
import { barriers, picture } from './support/look.ts'
import { type ShownDesk, startDesk } from './support/start-desk.ts'

// One evening at the office, in the order in which it happens: each test goes on where the last ended.
describe.skipIf(browserPath === undefined)('merging at the office', () => {
  let shown: ShownDesk

  beforeAll(async () => {
    const desk = new TestDesk()
    desk.now = eight + 3 * 86_400_000
    const stick = join(desk.folder, 'weekend-stick')
    mkdirSync(stick)
    disputedLogs(stick)
    shown = await startDesk(desk)
  })
  afterAll(() => shown.stop())

  const { getByText, getByRole } = {
    getByText: (text: string | RegExp) => shown.page.getByText(text),
    getByRole: (role: 'heading' | 'button' | 'list' | 'table', name: string | RegExp) =>
      shown.page.getByRole(role, { name }),
  }

  test('the logs of the stick are chosen and merged, and the report says what became of each', async () => {
    await getByRole('button', /Merge station logs/).waitFor()
    await press(shown.page, 'm')
    await getByRole('heading', 'Merge station logs').waitFor()
    await getByText('copy-of-26KRVD.stationlog').waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'merge-choose')
    await getByRole('button', /^Merge 8 logs/).click()
    await getByRole('heading', /^Merged into/).waitFor()
    await getByRole('table', 'Files merged').waitFor()
    await getByText('notes.stationlog is not a station log.').waitFor()
    await getByText(/entry 4 of 26PQRE was altered: set aside/).waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'merge-report')
  })

  test('the office takes the merged log up under a desk of its own', async () => {
    await press(shown.page, 'o')
    await getByRole('heading', 'Set up the office').waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'merge-office')
    await type(shown.page, 'Basin Office')
    await press(shown.page, 'Tab')
    await type(shown.page, 'HEC')
    for (let tabs = 0; tabs < 3; tabs += 1) await press(shown.page, 'Tab')
    await type(shown.page, 'Ada Moor')
    await press(shown.page, 'Tab')
    await type(shown.page, '4821')
    await press(shown.page, 'Enter')
    await getByRole('heading', /^Discrepancies/).waitFor()
    await shown.page.getByRole('list', { name: 'Discrepancies' }).waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'discrepancies')
  })

  test('one discrepancy of each kind is settled by keyboard, and the settlement is an entry', async () => {
    const { people } = await shown.desk.ask('people', {})
    await shown.desk.ask('person.signIn', { person: people[0]?.person ?? '', pin: '4821' })
    const { discrepancies } = await shown.desk.ask('discrepancies', {})
    const kinds = new Set(discrepancies.map(({ kind }) => kind))
    expect(kinds.size).toBe(14)
    for (const kind of kinds) await settleOne(kind)
    const settled = (await shown.desk.ask('discrepancies', {})).discrepancies
    expect(
      settled
        .filter(({ state }) => state === 'settled')
        .map(({ kind }) => kind)
        .toSorted(),
    ).toEqual([...kinds].toSorted())
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'discrepancies-settled')
    expect(shown.complaints).toEqual([])
  })

  async function settleOne(kind: keyof typeof discrepancyWords): Promise<void> {
    const row = shown.page
      .getByRole('list', { name: 'Discrepancies' })
      .getByRole('button', { name: new RegExp(`^${discrepancyWords[kind]}.*to settle$`) })
      .first()
    await row.focus()
    await press(shown.page, 'Enter')
    await getByRole('heading', discrepancyWords[kind]).waitFor()
    const before = await states()
    const ways = shown.page.getByRole('group', { name: 'Settle it' }).getByRole('radio')
    await ways.first().focus()
    await press(shown.page, '1')
    const which = shown.page.getByRole('group', { name: 'Which one' })
    if ((await which.count()) > 0) {
      await which.getByRole('radio').first().focus()
      await press(shown.page, 'a')
    }
    if (kind === 'bag-twice') await picture(shown.page, 'discrepancy-settling')
    await shown.page.getByLabel('Why, in a few words').focus()
    await type(shown.page, 'asked')
    await press(shown.page, 'Enter')
    await expect.poll(states).toBe(before + 1)
  }

  async function states(): Promise<number> {
    const { discrepancies } = await shown.desk.ask('discrepancies', {})
    return discrepancies.filter(({ state }) => state === 'settled').length
  }

  test('any animal of the weekend is found as its tag is typed', async () => {
    await shown.page.getByLabel('Beginning of its number, its tag or its hunter').focus()
    await type(shown.page, 't10')
    await getByRole('table', 'Animals found').waitFor()
    await expect.poll(() => getByRole('table', 'Animals found').innerText()).toContain('T100')
    expect(await barriers(shown.page)).toEqual([])
  })

  test('fits a small laptop without scrolling the page, and can be read at 200% zoom', async () => {
    const overflow = () =>
      shown.page.evaluate(() => ({
        down: document.documentElement.scrollHeight - window.innerHeight,
        across: document.documentElement.scrollWidth - window.innerWidth,
      }))
    expect(await overflow()).toEqual({ down: 0, across: 0 })
    await shown.page.setViewportSize({ width: 683, height: 384 })
    expect((await overflow()).across).toBe(0)
    await picture(shown.page, 'discrepancies-zoom-200')
    expect(await focused(shown.page)).toBeDefined()
  })
})
