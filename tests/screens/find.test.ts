import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import type { AnimalNumber, CoolerNumber, KitNumber } from '../../shared-types/sample-number.ts'
import { browserPath } from '../loopback/support/chromium.ts'
import { checkIn, leadPin, openCooler, openStation, sampleBoth } from '../support/desk.ts'
import { focused, press, scan, signIn, type } from './support/hands.ts'
import { barriers, picture } from './support/look.ts'
import { type ShownDesk, startDesk } from './support/start-desk.ts'

describe.skipIf(browserPath === undefined)('finding anything', () => {
  let shown: ShownDesk
  let animal: AnimalNumber
  let cooler: CoolerNumber
  let kit: KitNumber

  /** One deer sampled on both sides, its left bag in North 1; another animal of the same hunter waits. */
  beforeEach(async () => {
    const { desk, crew } = await openStation()
    animal = await checkIn(desk, { hunter: 'H7781', tag: 'T-990' })
    const sampled = await sampleBoth(desk, animal, crew.sampler)
    kit = sampled.kit
    cooler = await openCooler(desk)
    await desk.ask('bag.place', { bag: sampled.bags[0] ?? '', cooler })
    await checkIn(desk, { hunter: 'H7781', tag: 'T-991' })
    shown = await startDesk(desk)
    await signIn(shown.page, 'Orla Vance', leadPin)
    await shown.page.getByRole('list', { name: /^Animals waiting/ }).waitFor()
  })
  afterEach(() => shown.stop())

  const hits = () => shown.page.getByRole('list', { name: 'Found' })

  /** Letters typed into the box, and Enter: the story of the first that begins so. */
  async function seek(letters: string, story: string) {
    await press(shown.page, 'Control+K')
    await expect.poll(() => shown.page.locator('search input:focus').count()).toBe(1)
    await type(shown.page, letters)
    await press(shown.page, 'Enter')
    const dialog = shown.page.getByRole('dialog', { name: story })
    await dialog.waitFor()
    await expect.poll(() => dialog.getByRole('listitem').count()).toBeGreaterThan(0)
    return dialog
  }

  test('a list grows under the letters, and the arrows walk it', async () => {
    await press(shown.page, 'Control+K')
    await expect.poll(() => shown.page.locator('search input:focus').count()).toBe(1)
    await type(shown.page, 't-99')
    await expect.poll(() => hits().innerText()).toMatch(/Tag T-990.*Tag T-991/s)
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'find-hits')
    await press(shown.page, 'ArrowDown ArrowDown')
    await expect.poll(() => focused(shown.page)).toContain('Tag T-991')
    await press(shown.page, 'Enter')
    await shown.page.getByRole('dialog', { name: 'Tag T-991' }).waitFor()
  })

  test('a hunter tells the story of both animals', async () => {
    const story = await seek('h77', 'Hunter H7781')
    const told = await story.innerText()
    expect(told).toContain('2 animals: A0001, A0002')
    expect(told).toMatch(/A0001: Checked in/)
    expect(told).toMatch(/A0002: Checked in/)
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'find-hunter')
  })

  test('a cooler by its name tells what went into it', async () => {
    const story = await seek('north', 'Cooler North 1')
    await expect.poll(() => story.innerText()).toMatch(/Cooler North 1 opened.*put into cooler/s)
    await picture(shown.page, 'find-cooler')
    await press(shown.page, 'Alt+G')
    await expect.poll(() => shown.page.url()).toContain(`#coolers/${cooler}`)
  })

  test('what the crew calls A1 is the animal, and its kit and bags are found by the same letters', async () => {
    await press(shown.page, 'Control+K')
    await expect.poll(() => shown.page.locator('search input:focus').count()).toBe(1)
    await type(shown.page, 'a1')
    await expect.poll(() => hits().innerText()).toMatch(/Animal A0001.*Kit A0001.*Bag A0001/s)
    await press(shown.page, 'Escape')
    await expect.poll(() => hits().count()).toBe(0)
  })

  test('a scanned kit says what it is, and tells its story at a key', async () => {
    await scan(shown.page, kit)
    await shown.page.getByRole('button', { name: 'Story' }).last().waitFor()
    await expect.poll(() => shown.page.locator('.found-note').count()).toBe(1)
    await press(shown.page, 'Alt+H')
    const story = shown.page.getByRole('dialog', { name: 'Kit A0001' })
    await story.waitFor()
    await expect.poll(() => story.innerText()).toMatch(/Labels of kit.*opened by Ines Tarr/s)
  })

  test('what is not here is said, with what to do', async () => {
    await press(shown.page, 'Control+K')
    await expect.poll(() => shown.page.locator('search input:focus').count()).toBe(1)
    await type(shown.page, 'zz9')
    await press(shown.page, 'Enter')
    await shown.page.getByText('Nothing here begins with zz9.').waitFor()
  })
})
