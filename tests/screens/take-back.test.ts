import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import type { AnimalNumber } from '../../shared-types/sample-number.ts'
import { browserPath } from '../loopback/support/chromium.ts'
import { type Crew, checkIn, leadPin, openStation } from '../support/desk.ts'
import { press, scan, signIn } from './support/hands.ts'
import { barriers, picture } from './support/look.ts'
import { type ShownDesk, startDesk } from './support/start-desk.ts'

describe.skipIf(browserPath === undefined)('a slip at the desk', () => {
  let shown: ShownDesk
  let crew: Crew
  let animal: AnimalNumber

  /** The lead at the window, one animal waiting for a quarter of an hour. */
  beforeEach(async () => {
    const opened = await openStation()
    crew = opened.crew
    animal = await checkIn(opened.desk)
    opened.desk.wait(15)
    shown = await startDesk(opened.desk)
    await signIn(shown.page, 'Orla Vance', leadPin)
    await shown.page.getByRole('list', { name: /^Animals waiting/ }).waitFor()
  })
  afterEach(() => shown.stop())

  const offer = () => shown.page.getByRole('button', { name: /^Take back/ })
  const told = () => shown.page.locator('.scan-strip').innerText()
  const stands = async () => (await shown.desk.ask('animal', { animal })).state

  test('an animal given to the wrong sampler waits again at one key, and its story tells both', async () => {
    await scan(shown.page, crew.sampler)
    await shown.page.getByText('A0001 is with Ines Tarr.').waitFor()
    await expect.poll(() => offer().innerText()).toMatch(/A0001 given to Ines Tarr\s+\d+ s/)
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'take-back')
    await press(shown.page, 'Control+U')
    await shown.page.getByText('Taken back: A0001 given to Ines Tarr.').waitFor()
    expect(await stands()).toBe('waiting')
    await expect.poll(() => offer().count()).toBe(0)
    const { story } = await shown.desk.ask('animal', { animal })
    expect(story.map(({ kind }) => kind).slice(-3)).toEqual([
      'animal.assigned',
      'animal.put-back',
      'slip.taken-back',
    ])
  })

  test('the key says why there is nothing to take back, and who puts older things right', async () => {
    await press(shown.page, 'Control+U')
    await expect.poll(told).toMatch(/Not done\..*a minute.*Ask the lead/s)
    expect(await stands()).toBe('waiting')
  })

  test('what another has gone on with goes through the lead', async () => {
    await scan(shown.page, crew.sampler)
    await expect.poll(() => offer().count()).toBe(1)
    const kit = (
      await shown.desk.ask('labels.printKits', {
        for: { whom: 'animal', animal },
        stock: 'roll-51x25',
      })
    ).kits[0]
    expect(kit).toBeDefined()
    await expect.poll(() => offer().count()).toBe(0)
    await press(shown.page, 'Control+U')
    await expect.poll(told).toMatch(/Not done\..*Ask the lead/s)
    expect(await stands()).toBe('with-sampler')
  })

  test('a check-in taken back leaves its tag free to be checked in as it should be', async () => {
    const { facts } = await shown.desk.ask('animal', { animal })
    await shown.desk.sit(crew.volunteer)
    const again = { facts: { ...facts, tag: 'T-SLIP' }, contact: null }
    const slip = (await shown.desk.ask('animal.checkIn', again)).animal
    expect(await shown.desk.ask('slip', {})).toMatchObject({ slip: { say: 'A0002 checked in' } })
    await shown.desk.ask('slip.takeBack', {})
    expect((await shown.desk.ask('animal', { animal: slip })).state).toBe('struck-out')
    expect((await shown.desk.ask('line', {})).totals.checkedIn).toBe(1)
    const right = (await shown.desk.ask('animal.checkIn', again)).animal
    expect((await shown.desk.ask('animal', { animal: right })).state).toBe('waiting')
  })
})
