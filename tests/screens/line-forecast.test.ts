import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import type { AnimalNumber } from '../../shared-types/sample-number.ts'
import { browserPath } from '../loopback/support/chromium.ts'
import { type Crew, checkIn, leadPin, openStation, sampleBoth } from '../support/desk.ts'
import { press, signIn } from './support/hands.ts'
import { barriers, picture } from './support/look.ts'
import { type ShownDesk, startDesk } from './support/start-desk.ts'

describe.skipIf(browserPath === undefined)('the line ahead', () => {
  let shown: ShownDesk
  let crew: Crew
  let first: AnimalNumber

  /** Mid-morning: three animals sampled, six waiting, one sampler free. */
  beforeEach(async () => {
    const opened = await openStation()
    crew = opened.crew
    opened.desk.wait(90)
    for (let done = 0; done < 3; done += 1) {
      const animal = await checkIn(opened.desk)
      await opened.desk.ask('wait.tell', { animal })
      opened.desk.wait(2)
      await sampleBoth(opened.desk, animal, crew.sampler)
      opened.desk.wait(6)
    }
    first = await checkIn(opened.desk)
    for (let more = 0; more < 5; more += 1) {
      opened.desk.wait(5)
      await checkIn(opened.desk, more === 2 ? { species: 'elk' } : { programme: 'voluntary' })
    }
    shown = await startDesk(opened.desk)
    await signIn(shown.page, 'Orla Vance', leadPin)
    await shown.page.getByRole('region', { name: 'Suggested next' }).waitFor()
  })
  afterEach(() => shown.stop())

  const suggested = () => shown.page.getByRole('region', { name: 'Suggested next' })

  test('one key does what is suggested, for the reason that is shown', async () => {
    expect(await suggested().innerText()).toMatch(
      /Next: A0004 to Ines Tarr\. It has waited longest; Ines Tarr is free and trained for it\./,
    )
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'line-suggestion')
    await press(shown.page, 'n')
    await shown.page.getByText('A0004 is with Ines Tarr.').waitFor()
    expect(await shown.desk.ask('animal', { animal: first })).toMatchObject({
      state: 'with-sampler',
      sampler: crew.sampler,
    })
    await suggested().waitFor({ state: 'detached' })
  })

  test('one key sets it aside, and the next one in turn is suggested', async () => {
    await press(shown.page, 'x')
    await shown.page.getByText('A0004 is not suggested to Ines Tarr again.').waitFor()
    await expect.poll(() => suggested().innerText()).toContain('Next: A0007 to Ines Tarr')
    const { story } = await shown.desk.ask('animal', { animal: first })
    expect(story.at(-1)?.say).toBe('Suggestion for Ines Tarr set aside.')
  })

  test('each who waits has a range, and a car that drives in now has one too', async () => {
    const rows = shown.page.getByRole('list', { name: /^Animals waiting/ }).getByRole('button')
    await expect.poll(() => rows.last().innerText()).toMatch(/turn: \d+ to \d+ min/)
    await shown.page.getByText('wait for a car now').waitFor()
    await shown.page.getByText('waits that came true as told').waitFor()
  })

  test('the rest of the day: pictures with their tables, and a what-if by one key', async () => {
    await press(shown.page, 'd')
    const dialog = shown.page.getByRole('dialog', { name: 'The rest of the day' })
    await dialog.getByRole('heading', { name: 'Arrivals' }).waitFor()
    for (const name of ['Arrivals', 'Waits', 'Kits against what the day needs'])
      await dialog.getByRole('img', { name: new RegExp(`^${name}: .+\\.$`) }).waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'line-ahead')
    await dialog.getByText('As a table').first().click()
    await dialog.getByRole('table', { name: /^Arrivals/ }).waitFor()
    await press(shown.page, 't')
    await dialog.getByText(/^Typical wait for the rest of the day: /).waitFor()
    await picture(shown.page, 'line-what-if')
    expect(shown.complaints).toEqual([])
  })

  test('kits are moved as proposed by one key', async () => {
    await press(shown.page, 'd')
    const move = shown.page.getByRole('button', {
      name: /^1? ?Move \d+ kits from stock to Ines Tarr/,
    })
    await move.waitFor()
    await press(shown.page, '1')
    await shown.page.getByText(/Moved \d+ kits from stock to Ines Tarr\./).waitFor()
    await move.waitFor({ state: 'detached' })
  })

  test('a lead settles how the line runs, and what is out of its limits is said there', async () => {
    await press(shown.page, 'F10')
    await press(shown.page, 'Alt+E')
    const animals = shown.page.getByLabel('Animals expected')
    await animals.fill('none')
    await press(shown.page, 'Enter')
    await shown.page.getByText('A number from 1 to 20,000.').waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await animals.scrollIntoViewIfNeeded()
    await picture(shown.page, 'line-settings')
    await animals.fill('90')
    await press(shown.page, 'Enter')
    await shown.page.getByText('The settings are changed.').waitFor()
    const { settings } = await shown.desk.ask('who', {})
    expect(settings.line?.expectedAnimals).toBe(90)
  })
})
