import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { usualLineSettings } from '../../electron/station/line-settings.ts'
import { browserPath } from '../loopback/support/chromium.ts'
import { type Crew, crewPin, leadPin, openStation, settings } from '../support/desk.ts'
import { focused, press, signIn, type } from './support/hands.ts'
import { barriers, picture } from './support/look.ts'
import { type ShownDesk, startDesk } from './support/start-desk.ts'

describe.skipIf(browserPath === undefined)('the station screen', () => {
  let shown: ShownDesk
  let crew: Crew
  beforeEach(async () => {
    const opened = await openStation()
    crew = opened.crew
    shown = await startDesk(opened.desk)
    await signIn(shown.page, 'Orla Vance', leadPin)
    await press(shown.page, 'F10')
    await shown.page.getByRole('heading', { name: 'Crew 3' }).waitFor()
  })
  afterEach(() => shown.stop())

  const person = async (name: string) =>
    (await shown.desk.ask('people', {})).people.find((each) => each.name === name)

  test('a lead adds a sampler by keyboard and puts them on duty with one key', async () => {
    const { page } = shown
    await press(page, 'Alt+A')
    await page.getByRole('dialog', { name: 'Add a person' }).waitFor()
    expect(await barriers(page)).toEqual([])
    await type(page, 'Wyn Archer')
    await page.getByLabel('First PIN').fill('7531')
    await page.getByLabel('Once more').fill('7531')
    await press(page, 'Enter')
    await page.getByText('Wyn Archer is of the crew.').waitFor()
    expect(await person('Wyn Archer')).toMatchObject({ role: 'sampler', duty: 'off' })

    await page.getByRole('list', { name: 'Crew' }).getByRole('button').first().focus()
    await press(page, 'End o')
    await page.getByText('Wyn Archer is on duty.').waitFor()
    expect((await person('Wyn Archer'))?.duty).toBe('on')
    expect(await barriers(page)).toEqual([])
    await picture(page, 'station-crew')
    expect(shown.complaints).toEqual([])
  })

  test('a new PIN takes the own PIN of whoever sits here, and says so at that field', async () => {
    const { page, desk } = shown
    await page.getByRole('button', { name: /Ines Tarr/ }).focus()
    await press(page, 'p')
    await page.getByRole('dialog', { name: 'New PIN for Ines Tarr' }).waitFor()
    await type(page, '0000')
    await page.getByLabel('New PIN', { exact: true }).fill('8642')
    await page.getByLabel('New PIN once more').fill('8642')
    await press(page, 'Enter')
    await expect.poll(() => focused(page)).toContain('Your own PIN')
    expect(await barriers(page)).toEqual([])
    await page.getByLabel(/^Your own PIN/).fill(leadPin)
    await press(page, 'Enter')
    await page.getByText('Ines Tarr has a new PIN.').waitFor()
    expect(await desk.refusal('person.signIn', { person: crew.sampler, pin: crewPin })).toBeTruthy()
    await desk.as(crew.sampler, '8642')
  })

  test('a shift is planned in the time of the station', async () => {
    const { page } = shown
    await page.getByRole('button', { name: /Ines Tarr/ }).focus()
    await press(page, 'h')
    await page.getByRole('dialog', { name: 'Shift of Ines Tarr' }).waitFor()
    await page.getByLabel('From').fill('05:30')
    await page.getByLabel('To', { exact: true }).fill('13:00')
    await press(page, 'Enter')
    await page.getByText('Ines Tarr works from 05:30 to 13:00.').waitFor()
    expect((await person('Ines Tarr'))?.shift).toMatchObject({ from: '05:30', to: '13:00' })
  })

  test('a changed setting leaves all others as they were', async () => {
    const { page, desk } = shown
    await press(page, 'Alt+E')
    await page.getByLabel('Longest wait you aim for, minutes').fill('20')
    expect(await barriers(page)).toEqual([])
    await press(page, 'Enter')
    await page.getByText('The settings are changed.').waitFor()
    const after = (await desk.ask('who', {})).settings
    expect(after).toEqual({ ...settings, targetWaitMinutes: 20, line: usualLineSettings })
  })

  test('the next day is not opened over one that was never closed', async () => {
    const { page, desk } = shown
    desk.wait(24 * 60)
    await page.reload()
    await signIn(page, 'Orla Vance', leadPin)
    await press(page, 'Alt+D')
    await page.getByRole('dialog', { name: 'Open a day' }).waitFor()
    expect(await barriers(page)).toEqual([])
    await press(page, 'Enter')
    await page.getByRole('dialog').getByRole('alert').filter({ hasText: /clos/ }).waitFor()
    expect((await desk.ask('who', {})).day.date).toBe('2026-11-14')
  })

  test('a clock set back stops the work until the lead has looked at it and stands by it', async () => {
    const { page, desk } = shown
    desk.wait(-24 * 60)
    await page.getByRole('button', { name: /Ines Tarr/ }).focus()
    await press(page, 'b')
    await page.getByText(/^Not done\./).waitFor()
    expect((await person('Ines Tarr'))?.duty).toBe('on')
    await press(page, 'Alt+C')
    await page.getByText('The clock is accepted as it stands.').waitFor()
    await page.getByRole('button', { name: /Ines Tarr/ }).focus()
    await press(page, 'b')
    await page.getByText('Ines Tarr is on a break.').waitFor()
  })
})
