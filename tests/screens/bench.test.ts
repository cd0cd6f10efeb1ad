import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import {
  type AnimalNumber,
  bagNumber,
  kitNumber,
  numberParts,
} from '../../shared-types/sample-number.ts'
import { browserPath } from '../loopback/support/chromium.ts'
import { type Crew, checkIn, openStation } from '../support/desk.ts'
import { type PersonKeys, personKeys } from './person-keys.ts'
import { focused, press, scan, signIn } from './support/hands.ts'
import { barriers, picture } from './support/look.ts'
import { type ShownDesk, startDesk } from './support/start-desk.ts'

describe.skipIf(browserPath === undefined)('the bench', () => {
  let shown: ShownDesk
  let crew: Crew
  let keys: PersonKeys
  let animal: AnimalNumber

  /** An animal in the line, and its sampler at the bench. */
  beforeEach(async () => {
    const opened = await openStation()
    crew = opened.crew
    animal = await checkIn(opened.desk)
    opened.desk.wait(12)
    shown = await startDesk(opened.desk)
    await signIn(shown.page, 'Ines Tarr')
    keys = personKeys(shown.page)
    await press(shown.page, 'F4')
    await expect.poll(() => focused(shown.page)).toContain('Take it to the bench')
  })
  afterEach(() => shown.stop())

  const step = (name: string) =>
    shown.page.getByRole('heading', { level: 2, name, exact: true }).waitFor()
  const refusedHere = (words: string) =>
    shown.page.locator('.bench-refusal', { hasText: words }).waitFor()

  /** Kits reserved before dawn, as a station has them ready. */
  async function reserveKits(count: number) {
    const { kits } = await shown.desk.ask('labels.printKits', {
      for: { whom: 'reserve', count },
      stock: 'roll-51x25',
    })
    return kits.map((kit) => {
      const { desk, serial } = numberParts(kit)
      return { kit, left: bagNumber(desk, serial, 'L'), right: bagNumber(desk, serial, 'R') }
    })
  }

  async function oneKit() {
    const [kit] = await reserveKits(1)
    if (!kit) throw new Error('one kit was asked for')
    return kit
  }

  test('a whole animal is worked by keyboard and scanner alone', async () => {
    const [mine, other] = await reserveKits(2)
    if (!mine || !other) throw new Error('two kits were asked for')
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'bench-next')
    await keys.press('Enter')
    await step('Scan the kit')
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'bench-kit')

    // A bag of the kit is as good as its data card.
    await scan(shown.page, mine.right)
    await step('Left node: look at the cut face')
    expect(await barriers(shown.page)).toEqual([])

    // Gland is refused with advice, and a bag scanned meanwhile does not slip through.
    await keys.press('2', 'Enter')
    await shown.page.getByText('That is salivary gland, which cannot be tested.').first().waitFor()
    await scan(shown.page, mine.left)
    await refusedHere('The last look at the left node was salivary gland.')
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'bench-gland')
    await keys.press('1', 'Enter')
    await step('Left node: bag it and scan the bag')

    await scan(shown.page, mine.right)
    await refusedHere('That is the right bag label, and the tissue is the left node.')
    await shown.page
      .getByRole('alert')
      .filter({ hasText: /Not done|Wrong label/ })
      .waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'bench-wrong-side')
    await scan(shown.page, other.left)
    await refusedHere('belongs to another kit')
    const before = await shown.desk.ask('animal', { animal })
    expect(before.sites.map(({ bag }) => bag)).toEqual([null, null])

    await scan(shown.page, mine.left)
    await step('Right node: look at the cut face')
    await keys.press('1', 'Tab')
    await keys.type('2')
    await keys.press('Enter')
    await step('Right node: bag it and scan the bag')
    await scan(shown.page, mine.right)
    await step('Finish the animal')
    await picture(shown.page, 'bench-finish')
    await expect.poll(() => focused(shown.page)).toContain('Finish')
    await keys.press('Enter')
    await step('Both sides taken')
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'bench-finished')

    const after = await shown.desk.ask('animal', { animal })
    expect(after).toMatchObject({ state: 'finished', outcome: 'both', kit: mine.kit })
    expect(after.sites.map(({ bag }) => bag)).toEqual([mine.left, mine.right])
    await keys.press('Enter')
    await step('The bench is empty')
    expect(shown.complaints).toEqual([])
  })

  test('a side that was shot away is recorded as such, and the animal ends with one side', async () => {
    const mine = await oneKit()
    await keys.press('Enter')
    await step('Scan the kit')
    await scan(shown.page, mine.kit)
    await step('Left node: look at the cut face')
    await keys.press('Alt+M')
    await step('The left node is not taken: why?')
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'bench-not-taken')
    await keys.press('2', 'Enter')
    await step('Right node: look at the cut face')
    await keys.press('1', 'Enter')
    await step('Right node: bag it and scan the bag')
    await scan(shown.page, mine.right)
    await step('Finish the animal')
    await keys.press('Enter')
    await step('One side taken')
    const { outcome, sites } = await shown.desk.ask('animal', { animal })
    expect(outcome).toBe('one')
    expect(sites.map(({ missed }) => missed?.reason)).toEqual(['shot-away', undefined])
  })

  test('numbers typed by hand open the kit and seal the bag, and press nothing on the way', async () => {
    const mine = await oneKit()
    await keys.press('Enter')
    await step('Scan the kit')
    await expect.poll(() => focused(shown.page)).toContain('Or type its number')
    await keys.type(mine.kit)
    await keys.press('Enter')
    await step('Left node: look at the cut face')
    await expect.poll(() => focused(shown.page)).toContain('lymph node')
    await keys.press('1', 'Enter')
    await step('Left node: bag it and scan the bag')
    await expect.poll(() => focused(shown.page)).toContain("Or type the bag's number")
    await keys.press('Alt+C')
    await step('Left node: look at the cut face')
    await expect.poll(() => focused(shown.page)).toContain('lymph node')
    await keys.press('1', 'Enter')
    await step('Left node: bag it and scan the bag')
    await expect.poll(() => focused(shown.page)).toContain("Or type the bag's number")
    const looks = async () =>
      (await shown.desk.ask('animal', { animal })).story.filter(
        ({ kind }) => kind === 'tissue.checked',
      ).length
    const before = await looks()
    await keys.type(mine.left)
    await keys.press('Enter')
    await step('Right node: look at the cut face')
    expect(before).toBe(2)
    expect(await looks()).toBe(before)
    const { sites } = await shown.desk.ask('animal', { animal })
    expect(sites.map(({ bag }) => bag)).toEqual([mine.left, null])
  })

  test('a kit that was never numbered here is refused in words, and nothing is opened', async () => {
    await keys.press('Enter')
    await step('Scan the kit')
    await scan(shown.page, kitNumber(numberParts(animal).desk, 900))
    await shown.page.locator('.bench-refusal').waitFor()
    expect((await shown.desk.ask('animal', { animal })).kitOpened).toBe(false)
  })

  test('a sealed bag that tears is discarded at the bench, and its site is open again', async () => {
    const mine = await oneKit()
    await keys.press('Enter')
    await step('Scan the kit')
    await scan(shown.page, mine.kit)
    await step('Left node: look at the cut face')
    await keys.press('1', 'Enter')
    await step('Left node: bag it and scan the bag')
    await scan(shown.page, mine.left)
    await step('Right node: look at the cut face')
    await keys.press('Alt+L')
    await step('Left node: sealed in its bag')
    await picture(shown.page, 'bench-sealed')
    expect(await barriers(shown.page)).toEqual([])
    await keys.type('torn at the seam')
    await keys.press('Enter')
    await step('Left node: look at the cut face')
    const { sites } = await shown.desk.ask('animal', { animal })
    expect(sites[0]?.bag).toBeNull()
  })

  test('arrow keys look through the benches, and only Enter goes to one', async () => {
    await shown.desk.ask('animal.assign', { animal, sampler: crew.sampler })
    const page = await shown.openWindow()
    await signIn(page, 'Orla Vance', '4821')
    await press(page, 'F4')
    await page.getByLabel('Bench of').focus()
    await press(page, 'ArrowDown')
    await page.getByText('Enter shows this bench.').waitFor()
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('SELECT')
    expect(await page.getByRole('heading', { level: 2, name: 'Scan the kit' }).count()).toBe(0)
    await press(page, 'Enter')
    await page.getByRole('heading', { level: 2, name: 'Scan the kit' }).waitFor()
  })

  test('a hunter who does not agree any more stops the bench', async () => {
    await keys.press('Enter')
    await step('Scan the kit')
    const { facts } = await shown.desk.ask('animal', { animal })
    const lead = await shown.openWindow()
    await signIn(lead, 'Orla Vance', '4821')
    await shown.desk.sit(crew.lead, '4821')
    await shown.desk.ask('animal.amend', {
      animal,
      facts: { ...facts, consent: 'refused' },
      reason: 'changed their mind',
    })
    await step('Stop: the hunter does not agree')
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'bench-stopped')
    await press(shown.page, 'Alt+H')
    await expect.poll(async () => (await shown.desk.ask('animal', { animal })).state).toBe('left')
  })

  test("the lead may look at each sampler's bench", async () => {
    await shown.desk.ask('animal.assign', { animal, sampler: crew.sampler })
    const page = await shown.openWindow()
    await signIn(page, 'Orla Vance', '4821')
    await press(page, 'F4')
    await page.getByLabel('Bench of').selectOption('Ines Tarr')
    await page.getByRole('heading', { level: 2, name: 'Scan the kit' }).waitFor()
    expect(await barriers(page)).toEqual([])
    await picture(page, 'bench-of-another')
  })
})
