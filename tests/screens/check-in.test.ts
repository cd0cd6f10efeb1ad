import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { browserPath } from '../loopback/support/chromium.ts'
import { type Crew, checkIn, openStation } from '../support/desk.ts'
import { type PersonKeys, personKeys } from './person-keys.ts'
import { focused, press, scan, signIn } from './support/hands.ts'
import { barriers, picture } from './support/look.ts'
import { type ShownDesk, startDesk } from './support/start-desk.ts'

describe.skipIf(browserPath === undefined)('check-in', () => {
  let shown: ShownDesk
  let crew: Crew
  let keys: PersonKeys

  /** A volunteer at the check-in window, the focus in the hunter id. */
  beforeEach(async () => {
    const opened = await openStation()
    crew = opened.crew
    shown = await startDesk(opened.desk)
    await signIn(shown.page, 'Bo Quill')
    await press(shown.page, 'F3')
    await expect.poll(() => focused(shown.page)).toContain('Hunter id')
    keys = personKeys(shown.page)
  })
  afterEach(() => shown.stop())

  const checkedIn = () => shown.page.getByRole('heading', { name: 'Checked in' }).waitFor()
  const waiting = async () => (await shown.desk.ask('line', {})).waiting

  /** The first animal of the day, by scanner for the numbers and by keyboard for the rest. */
  async function checkInFirst() {
    await scan(shown.page, '204881733')
    await scan(shown.page, 'MD0042117')
    await keys.press('y', 'Enter', '2', 'Enter', 'm', 'Enter', 'c', 'Enter', '3', 'Enter')
    await keys.press('Enter', 'Enter', 'Enter')
    await keys.type('12')
    await keys.press('Enter')
    await keys.type('Dry Fork')
    await keys.press('F12')
    await checkedIn()
  }

  test('a practised volunteer checks in the next animal with at most 45 keys, well under 20 seconds', async () => {
    await checkInFirst()
    await keys.press('Enter')
    await expect.poll(() => focused(shown.page)).toContain('Hunter id')
    keys.counted()
    const begun = performance.now()
    await keys.type('204881734')
    await keys.press('Enter')
    await keys.type('MD0042118')
    await keys.press('Enter', 'y', 'Enter', 'Enter', 'f', 'Enter', 'h', 'Enter', '3')
    await keys.press('Enter', 'Enter', 'Enter', 'Enter', 'Enter')
    await keys.type('Elk Cr')
    await keys.press('F12')
    await checkedIn()

    expect(keys.counted()).toBeLessThanOrEqual(45)
    expect(performance.now() - begun).toBeLessThan(20_000)
    expect((await waiting()).find(({ tag }) => tag === 'MD0042118')).toMatchObject({
      hunter: '204881734',
      species: 'mule-deer',
      sex: 'female',
      age: 'adult',
      programme: 'mandatory',
      placeUsable: true,
      head: { presented: 'head-only', faults: [] },
    })
    await shown.page.getByText('Number 2 of 2 in the line').waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'checked-in')
    expect(shown.complaints).toEqual([])
  })

  test('species, unit and date stay for the next animal; who it is never does', async () => {
    await checkInFirst()
    await keys.press('Enter')
    const value = (label: string) => shown.page.getByLabel(label, { exact: true }).inputValue()
    await expect.poll(() => value('Hunter id')).toBe('')
    expect(await value('Tag')).toBe('')
    expect(await value('Unit')).toBe('12')
    const chosen = shown.page.getByRole('radio', { checked: true })
    expect(
      await chosen.evaluateAll((all) =>
        all.map((each) => each.closest('label')?.innerText.split('\n')[0]),
      ),
    ).toEqual(['mule deer', 'unit', 'mandatory'])
    await picture(shown.page, 'check-in')
    expect(await barriers(shown.page)).toEqual([])
  })

  test('the hour of harvest is taken where the hunter knows it, beside the date', async () => {
    await shown.page.getByLabel('at', { exact: true }).fill('06:40')
    await shown.page.getByLabel('Hunter id').focus()
    await checkInFirst()
    const [animal] = await waiting()
    const { facts } = await shown.desk.ask('animal', { animal: animal?.animal ?? '' })
    expect(facts.harvestedAt).toBe('06:40')
  })

  test('a tag that is already here is told while it is being typed', async () => {
    const first = await checkIn(shown.desk, { tag: 'T777', hunter: 'H41' })
    shown.desk.wait(42)
    // Any change of duty makes the window read the desk's clock anew.
    await shown.desk.ask('duty.change', { person: crew.volunteer, duty: 'on' })
    await keys.type('H55')
    await keys.press('Enter')
    await keys.type('t777')
    const told = shown.page.getByRole('alert').filter({ hasText: 'This tag is already here' })
    await told.waitFor()
    expect(await told.innerText()).toContain(first.slice(6, 10))
    expect(await told.innerText()).toContain('hunter H41')
    expect(await told.innerText()).toMatch(/06:00 MST \(42\s+min ago\)/)
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'check-in-tag-seen')
    await keys.type('8')
    await told.waitFor({ state: 'detached' })
  })

  test('a question left open is asked again, with the focus in it', async () => {
    await scan(shown.page, '204881733')
    await keys.press('F12')
    await expect.poll(() => focused(shown.page)).toBe('Tag')
    await shown.page.getByText('Choose the age class from the lower jaw.').waitFor()
    expect(await waiting()).toEqual([])
    expect(await barriers(shown.page)).toEqual([])
  })

  test('without a usable place the volunteer is warned before and after', async () => {
    await scan(shown.page, '204881733')
    await scan(shown.page, 'MD0042117')
    await keys.press('y', 'Enter', '2', 'Enter', 'm', 'Enter', 'c', 'Enter', '3', 'Enter')
    await keys.press('Enter', 'Enter', 'n')
    await shown.page.getByText('A sample without a usable place is commonly not tested.').waitFor()
    await picture(shown.page, 'check-in-no-place')
    await keys.press('Control+Enter')
    await checkedIn()
    await shown.page.getByText('The place of harvest is not precise enough').waitFor()
    expect((await waiting())[0]?.placeUsable).toBe(false)
  })

  test('the jaw aid stands beside the age class, and a draft outlives a look at the line', async () => {
    await scan(shown.page, '204881733')
    await scan(shown.page, 'MD0042117')
    await keys.press('y', 'Enter', 'Enter', 'Enter', 'Enter', '2')
    await shown.page.getByText('the third has three cusps').waitFor()
    await picture(shown.page, 'check-in-jaw')
    await press(shown.page, 'F2')
    await shown.page.getByRole('list', { name: /^Crew/ }).waitFor()
    await press(shown.page, 'F3')
    expect(await shown.page.getByLabel('Tag', { exact: true }).inputValue()).toBe('MD0042117')
  })

  test('the contact is kept apart: in no entry, seen by the volunteer', async () => {
    await scan(shown.page, '204881733')
    await scan(shown.page, 'MD0042117')
    await keys.press('y', 'Enter', '2', 'Enter', 'm', 'Enter', 'c', 'Enter', '3', 'Enter')
    await keys.press('Enter', 'Enter', 'Enter')
    await keys.type('12')
    await press(shown.page, 'Control+E')
    await expect.poll(() => focused(shown.page)).toBe('Name')
    await keys.type('Pell Arden')
    await keys.press('Enter')
    await keys.type('(555) 0142')
    await picture(shown.page, 'check-in-contact')
    await keys.press('F12')
    await checkedIn()
    const [animal] = await waiting()
    if (!animal) throw new Error('the animal is in the line')
    const { contact } = await shown.desk.ask('animal', { animal: animal.animal })
    expect(contact).toEqual({ name: 'Pell Arden', phone: '(555) 0142', email: '' })
    const { text } = await shown.desk.ask('table', {
      what: 'entries',
      format: 'json',
      hunters: true,
    })
    expect(text).toContain('MD0042117')
    expect(text).not.toContain('Arden')
    expect(text).not.toContain('(555)')
  })

  test('Ctrl+P prints the labels of the animal once and opens them', async () => {
    await checkInFirst()
    const opened = shown.page.context().waitForEvent('page')
    await press(shown.page, 'Control+P')
    await opened
    await shown.page.getByRole('button', { name: 'Open the labels again' }).waitFor()
    const { reserved } = await shown.desk.ask('kits', {})
    expect(reserved.map(({ animal }) => animal)).toEqual(
      (await waiting()).map(({ animal }) => animal),
    )
  })

  test('the next animal begun without labels for the last: the strip says whose are owed, and where', async () => {
    await checkInFirst()
    await shown.page.getByText('Number 1 of 1 in the line').waitFor()
    await expect.poll(() => focused(shown.page)).toContain('Next animal')
    await keys.press('Enter')
    const strip = () => shown.page.locator('.scan-strip').innerText()
    await expect.poll(strip).toMatch(/Still to do\..*A0001.*has no labels yet.*F6/s)
    expect(await barriers(shown.page)).toEqual([])
  })

  test('a check-in taken back says so, and what was typed is there to be put right', async () => {
    await checkInFirst()
    await expect.poll(() => focused(shown.page)).toContain('Next animal')
    await shown.page.getByRole('button', { name: /^Take back/ }).waitFor()
    await press(shown.page, 'Control+U')
    await shown.page.getByRole('heading', { name: 'Check-in taken back' }).waitFor()
    expect(await shown.page.getByRole('button', { name: 'Print labels' }).count()).toBe(0)
    expect(await shown.page.getByText('Tell the hunter').count()).toBe(0)
    await expect.poll(() => focused(shown.page)).toContain('Correct what was typed')
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'check-in-taken-back')
    await keys.press('Enter')
    await expect.poll(() => focused(shown.page)).toContain('Hunter id')
    const value = (label: string) => shown.page.getByLabel(label, { exact: true }).inputValue()
    expect(await value('Hunter id')).toBe('204881733')
    expect(await value('Tag')).toBe('MD0042117')
    await keys.press('F12')
    await checkedIn()
    expect((await waiting()).map(({ tag }) => tag)).toEqual(['MD0042117'])
  })

  test('once a sampler has the animal, no wait is told to the hunter any more', async () => {
    await checkInFirst()
    await shown.page.getByText('Tell the hunter: a sampler takes it').waitFor()
    const [animal] = await waiting()
    await shown.desk.ask('animal.assign', { animal: animal?.animal ?? '', sampler: crew.sampler })
    await shown.page.getByText('Already with a sampler').waitFor()
    await expect
      .poll(() => shown.page.getByText('Tell the hunter: a sampler takes it').count())
      .toBe(0)
  })
})
