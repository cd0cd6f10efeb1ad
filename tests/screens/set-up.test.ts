import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { entriesAt } from '../../renderer/frame/screens.ts'
import { browserPath } from '../loopback/support/chromium.ts'
import { focused, press, type } from './support/hands.ts'
import { barriers, picture } from './support/look.ts'
import { type ShownDesk, startDesk } from './support/start-desk.ts'

describe.skipIf(browserPath === undefined)('on a laptop without a station log', () => {
  let shown: ShownDesk
  beforeEach(async () => {
    shown = await startDesk()
  })
  afterEach(() => shown.stop())

  test('a lead sets up a station from nothing by keyboard alone', async () => {
    const { page, desk } = shown
    await page.getByRole('heading', { name: 'Duskline' }).waitFor()
    expect(await barriers(page)).toEqual([])
    await picture(page, 'shelf')

    await press(page, 's')
    await page.getByRole('heading', { name: '1 of 4: Station' }).waitFor()
    expect(await focused(page)).toBe('Name of the station')
    await type(page, 'Cinder Gap')
    expect(await barriers(page)).toEqual([])
    await picture(page, 'set-up-1-station')
    await press(page, 'Enter')

    await page.getByRole('heading', { name: '2 of 4: What is sampled' }).waitFor()
    await type(page, '12')
    await press(page, 'Tab')
    await type(page, 'Juniper Bench')
    expect(await barriers(page)).toEqual([])
    await picture(page, 'set-up-2-sampled')
    await press(page, 'Enter')

    await page.getByRole('heading', { name: '3 of 4: How it is kept' }).waitFor()
    await type(page, 'Basin Animal Disease Laboratory')
    expect(await barriers(page)).toEqual([])
    await picture(page, 'set-up-3-kept')
    await press(page, 'Enter')

    await page.getByRole('heading', { name: '4 of 4: Counts and lead' }).waitFor()
    for (const answer of ['100', '1000', '3', 'Orla Vance', '4821', '4821']) {
      await type(page, answer)
      if (answer !== '4821' || (await focused(page)) !== 'Your PIN once more')
        await press(page, 'Tab')
    }
    expect(await barriers(page)).toEqual([])
    await picture(page, 'set-up-4-lead')
    await press(page, 'Enter')

    await page.getByRole('heading', { name: 'Crew 1' }).waitFor()
    const { open } = await desk.ask('shelf.look', {})
    expect(open).toContain('26CNDA')
    const who = await desk.ask('who', {})
    expect(who.station).toMatchObject({ name: 'Cinder Gap', zone: 'America/Denver' })
    expect(who.day).toEqual({ date: '2026-11-14', state: 'open' })
    expect(await barriers(page)).toEqual([])
    await picture(page, 'station')
    expect(shown.complaints).toEqual([])
  })

  test('a step says what is missing, puts the focus there, and waits', async () => {
    const { page } = shown
    await page.getByRole('heading', { name: 'Duskline' }).waitFor()
    await press(page, 's')
    await page.getByRole('heading', { name: '1 of 4: Station' }).waitFor()
    await press(page, 'Enter')
    await page.getByText('A name of 2 to 60 characters.').waitFor()
    expect(await focused(page)).toBe('Name of the station')
    expect(await barriers(page)).toEqual([])

    await type(page, 'Gap')
    await page.getByLabel('Station code').fill('0B1')
    await press(page, 'Enter')
    await page.getByText('Three of A C D E F H J K M N P Q R T V W X Y 3 4 6 7 9.').waitFor()
    expect(await focused(page)).toBe('Station code')
  })

  test('two PINs that differ set nothing up', async () => {
    const { page, desk } = shown
    await page.getByRole('heading', { name: 'Duskline' }).waitFor()
    await press(page, 's')
    await page.getByLabel('Name of the station').fill('Cinder Gap')
    await press(page, 'Enter')
    await page.getByLabel('Code of unit 1').fill('12')
    await press(page, 'Enter')
    await page.getByLabel('Laboratory the samples go to').fill('Basin Laboratory')
    await press(page, 'Enter')
    await page.getByLabel('Kits counted in stock').fill('10')
    await page.getByLabel('Blank labels counted').fill('10')
    await page.getByLabel('Your name: you will be the station lead').fill('Orla Vance')
    await page.getByLabel('Your PIN', { exact: true }).fill('4821')
    await page.getByLabel('Your PIN once more').fill('4812')
    await press(page, 'Enter')
    await page.getByText('The two PINs differ: type both again.').waitFor()
    expect((await desk.ask('shelf.look', {})).open).toBeNull()
  })

  test('a practice day opens at one key, tells the PIN, and says PRACTICE on every screen', async () => {
    const { page } = shown
    await page.getByRole('heading', { name: 'Duskline' }).waitFor()
    await press(page, 'p')
    await page.getByRole('heading', { name: 'Who is working here now?' }).waitFor()
    const told = await page.getByText("everyone's PIN is").first().innerText()
    const pin = /\d{4,8}/.exec(told)?.[0] ?? 'none'
    expect(await barriers(page)).toEqual([])
    await picture(page, 'practice-sign-in')
    await page
      .getByRole('radio', { name: /station lead/ })
      .first()
      .focus()
    await press(page, 'Enter')
    await type(page, pin)
    await press(page, 'Enter')
    await page.getByRole('list', { name: /^Animals waiting/ }).waitFor()
    for (const { key, screen } of entriesAt(false)) {
      await press(page, key)
      await expect.poll(() => page.url()).toContain(`#${screen}`)
      expect(await page.getByText('PRACTICE', { exact: true }).isVisible()).toBe(true)
    }
    await press(page, 'F2')
    await page.getByRole('list', { name: /^Animals waiting/ }).waitFor()
    expect(await barriers(page)).toEqual([])
    await picture(page, 'practice-line')
    await page.setViewportSize({ width: 1920, height: 1080 })
    await picture(page, 'practice-line-wide')
    expect(shown.complaints).toEqual([])
  })
})
