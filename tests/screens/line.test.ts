import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import type { AnimalNumber } from '../../shared-types/sample-number.ts'
import { browserPath } from '../loopback/support/chromium.ts'
import { type Crew, checkIn, leadPin, openStation } from '../support/desk.ts'
import { focused, press, scan, signIn, type } from './support/hands.ts'
import { barriers, picture } from './support/look.ts'
import { type ShownDesk, startDesk } from './support/start-desk.ts'

describe.skipIf(browserPath === undefined)('the line', () => {
  let shown: ShownDesk
  let crew: Crew
  let first: AnimalNumber
  let second: AnimalNumber

  /** A lead at the window, two animals waiting: the first 40 minutes, the second 10. */
  beforeEach(async () => {
    const opened = await openStation()
    crew = opened.crew
    first = await checkIn(opened.desk)
    opened.desk.wait(30)
    second = await checkIn(opened.desk, { species: 'elk', sex: 'female' })
    opened.desk.wait(10)
    shown = await startDesk(opened.desk)
    await signIn(shown.page, 'Orla Vance', leadPin)
    await shown.page.getByRole('list', { name: /^Animals waiting/ }).waitFor()
  })
  afterEach(() => shown.stop())

  const waiting = () => shown.page.getByRole('list', { name: /^Animals waiting/ })
  const crewList = () => shown.page.getByRole('list', { name: /^Crew, free/ })
  const animalNow = async (animal: AnimalNumber) => {
    const { state, sampler } = await shown.desk.ask('animal', { animal })
    return { state, sampler }
  }

  test('shows who waits longest, how long, and how far over the target', async () => {
    const rows = waiting().getByRole('button')
    await expect.poll(() => rows.count()).toBe(2)
    expect(await rows.first().innerText()).toMatch(/40\s+min\s+10 min over/)
    expect(await rows.last().innerText()).toMatch(/10\s+min\s+20 min left/)
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'line')
    expect(shown.complaints).toEqual([])
  })

  test('the focus stands on the next animal; Enter and a digit give it to a free sampler', async () => {
    expect(await focused(shown.page)).toContain('A0001')
    await press(shown.page, 'Enter')
    await shown.page.getByRole('dialog', { name: 'Who takes A0001?' }).waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'line-assign')
    const ines = shown.page.getByRole('button', { name: /^Ines Tarr/ })
    const key = await ines.getAttribute('aria-keyshortcuts')
    await press(shown.page, key ?? 'none')
    await shown.page.getByText('A0001 is with Ines Tarr.').waitFor()
    expect(await animalNow(first)).toEqual({ state: 'with-sampler', sampler: crew.sampler })
    await expect.poll(() => crewList().innerText()).toContain('working')
    await expect.poll(() => focused(shown.page)).toContain('A0002')
  })

  test('an animal goes back to the line, or leaves, with the reason typed', async () => {
    await shown.desk.ask('animal.assign', { animal: first, sampler: crew.sampler })
    await expect.poll(() => crewList().innerText()).toContain('A0001')
    await crewList()
      .getByRole('button', { name: /Ines Tarr/ })
      .focus()
    await press(shown.page, 'b')
    await shown.page.getByRole('dialog', { name: 'Put A0001 back in the line' }).waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await type(shown.page, 'called away')
    await press(shown.page, 'Enter')
    await shown.page.getByText('A0001 waits again.').waitFor()
    expect(await animalNow(first)).toEqual({ state: 'waiting', sampler: null })

    await waiting().getByRole('button', { name: /A0002/ }).focus()
    await press(shown.page, 'l')
    await shown.page.getByRole('dialog', { name: 'The hunter of A0002 leaves' }).waitFor()
    await press(shown.page, 'Enter')
    await expect.poll(() => shown.page.getByRole('alert').allInnerTexts()).not.toEqual([])
    await type(shown.page, 'could not wait longer')
    await press(shown.page, 'Enter')
    await shown.page.getByText('A0002 left unsampled.').waitFor()
    expect((await animalNow(second)).state).toBe('left')
  })

  test('an animal is given to someone else while it is being worked', async () => {
    await shown.desk.ask('animal.assign', { animal: first, sampler: crew.sampler })
    await expect.poll(() => crewList().innerText()).toContain('A0001')
    await crewList()
      .getByRole('button', { name: /Ines Tarr/ })
      .focus()
    await press(shown.page, 'r')
    await shown.page.getByRole('dialog', { name: 'Who takes A0001?' }).waitFor()
    await press(shown.page, '1')
    await shown.page.getByText('A0001 is with Orla Vance.').waitFor()
    expect((await animalNow(first)).sampler).toBe(crew.lead)
  })

  test('a badge scanned on the line gives the chosen animal to its bearer', async () => {
    await press(shown.page, 'ArrowDown')
    await scan(shown.page, crew.sampler)
    await shown.page.getByText('A0002 is with Ines Tarr.').waitFor()
    expect((await animalNow(second)).sampler).toBe(crew.sampler)
  })

  test('an animal tells its story at a key, and Esc gives the line back', async () => {
    await press(shown.page, 's')
    await shown.page.getByRole('dialog', { name: 'The story of A0001' }).waitFor()
    await shown.page.getByText('head of Dry Fork').waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'line-story')
    await press(shown.page, 'Escape')
    await expect.poll(() => focused(shown.page)).toContain('A0001')
  })

  test('the find box says what a number is and leads to it', async () => {
    await press(shown.page, 'Control+K')
    await type(shown.page, second.toLowerCase())
    await press(shown.page, 'Enter')
    await shown.page.getByRole('button', { name: 'Go to Line' }).waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await press(shown.page, 'Alt+G')
    await shown.page.getByRole('dialog', { name: 'The story of A0002' }).waitFor()
  })

  test('a label of another part of the day, scanned here, is explained and led to its screen', async () => {
    const { cooler } = await shown.desk.ask('cooler.open', {
      name: 'North 1',
      keeping: 'chilled',
      capacity: 60,
    })
    await scan(shown.page, cooler)
    await shown.page.getByRole('button', { name: 'Go to Coolers' }).waitFor()
    await press(shown.page, 'Alt+G')
    await expect.poll(() => shown.page.url()).toContain(`#coolers/${cooler}`)
  })

  test('a scan leaves the field it landed in as it was', async () => {
    await press(shown.page, 'Control+K')
    await type(shown.page, '26')
    await scan(shown.page, first)
    await shown.page.getByText('A0001 is chosen.').waitFor()
    expect(await shown.page.getByRole('textbox', { name: /^Find anything/ }).inputValue()).toBe(
      '26',
    )
  })

  test('a misread label is refused in words, and nothing is chosen', async () => {
    await scan(shown.page, `${first.slice(0, -1)}${first.endsWith('Q') ? 'R' : 'Q'}`)
    await shown.page.getByText(/one of them was misread/).waitFor()
  })

  test('a quick change of person keeps the screen; a wrong PIN is said plainly', async () => {
    await press(shown.page, 'F10')
    await shown.page.getByRole('heading', { name: /^Crew/ }).waitFor()
    await press(shown.page, 'Control+L')
    await shown.page.getByRole('heading', { name: 'Who is working here now?' }).waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'sign-in')
    await scan(shown.page, crew.volunteer)
    await expect.poll(() => focused(shown.page)).toBe('PIN of Bo Quill')
    await type(shown.page, '0000')
    await press(shown.page, 'Enter')
    await shown.page
      .getByText(/PIN/)
      .filter({ hasText: /wrong|not/ })
      .first()
      .waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await type(shown.page, '1357')
    await press(shown.page, 'Enter')
    await shown.page.getByRole('heading', { name: /^Crew/ }).waitFor()
    await shown.page.getByText('look only', { exact: true }).first().waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'station-volunteer')
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
    await picture(shown.page, 'line-zoom-200')
  })

  test('at night the lamps are muted and nothing loses its contrast', async () => {
    await press(shown.page, 'Alt+N')
    await expect
      .poll(() => shown.page.evaluate(() => document.documentElement.dataset.light))
      .toBe('night')
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'line-night')
  })

  test('in low sun the screen is black on white, and then as by day again', async () => {
    const light = () => shown.page.evaluate(() => document.documentElement.dataset.light)
    await press(shown.page, 'Alt+N')
    await expect.poll(light).toBe('night')
    await expect
      .poll(() => shown.page.getByRole('button', { name: 'High contrast' }).count())
      .toBe(1)
    await press(shown.page, 'Alt+N')
    await expect.poll(light).toBe('contrast')
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'line-contrast')
    await press(shown.page, 'Alt+N')
    await expect.poll(light).toBe('day')
  })
})
