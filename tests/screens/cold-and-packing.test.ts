import type { Page } from 'playwright-core'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { grouped } from '../../shared-types/sample-number.ts'
import { browserPath } from '../loopback/support/chromium.ts'
import { leadPin } from '../support/desk.ts'
import { type Afternoon, afternoon, placeBags } from './support/dusk.ts'
import { press, scan, signIn, type } from './support/hands.ts'
import { barriers, picture } from './support/look.ts'
import { type ShownDesk, startDesk } from './support/start-desk.ts'

describe.skipIf(browserPath === undefined)('cold, ice and packing', () => {
  let day: Afternoon
  let shown: ShownDesk

  beforeEach(async () => {
    day = await afternoon()
    await placeBags(day.desk, day.bags, day.cooler)
    day.desk.wait(120)
  })
  afterEach(() => shown.stop())

  async function open(key: string): Promise<Page> {
    shown = await startDesk(day.desk)
    await signIn(shown.page, 'Orla Vance', leadPin)
    await press(shown.page, key)
    return shown.page
  }

  const choose = (page: Page, group: RegExp, name: string | RegExp) =>
    page.getByRole('group', { name: group }).getByText(name).first().click()

  /** Every ten minutes up to now, with a hole and a warm spell, in UTC. */
  function loggerFile(): string {
    const at = (minutes: number) =>
      new Date(day.desk.now - minutes * 60_000).toISOString().slice(0, 19).replace('T', ' ')
    const lines = [110, 100, 90, 30, 20, 10].map((minutes, place) => {
      const celsius = [3.5, 3.6, 3.4, 11.5, 12, 4.2][place]
      return `${at(minutes)};${celsius};98`
    })
    return ['Time;Inside;Battery', ...lines].join('\n')
  }

  test('a logger’s file is taken in by what a person says of it, and the chart tells it in words too', async () => {
    const page = await open('F7')
    await page.getByRole('heading', { name: /North 1/ }).waitFor()
    await press(page, 'Alt+I')
    await page
      .getByLabel('The logger’s file (CSV)')
      .setInputFiles({ name: 'north.csv', mimeType: 'text/csv', buffer: Buffer.from(loggerFile()) })
    await choose(page, /Column of the time/, /^1:/)
    await choose(page, /Column of the temperature/, /^2:/)
    await choose(page, /Unit the logger shows/, '°C')
    await choose(page, /How it writes a date/, '2026-11-14')
    await page.getByLabel('Time zone of its clock').fill('UTC')
    await page.getByText(/6 readings from/).waitFor()
    await page.getByText(/Gap without readings/).waitFor()
    expect(await barriers(page)).toEqual([])
    await picture(page, 'cold-logger')
    await press(page, 'Alt+K')
    await page.getByRole('img', { name: /^Temperature from/ }).waitFor()
    const told = page.getByRole('region', { name: 'How cold it was' })
    const words = await told.innerText()
    expect(words).toMatch(/Mean kinetic temperature.*over\s+1.7 h; peak\s+12.0 °C/)
    expect(words).toContain('decides nothing here')
    expect(words).toContain('no readings')
    for (const bag of day.bags) expect(words).toContain(grouped(bag))
    expect(await barriers(page)).toEqual([])
    await told.scrollIntoViewIfNeeded()
    await picture(page, 'cold-chart')
    expect(shown.complaints).toEqual([])
  })

  test('a temperature that looks like °F is asked about, and recorded once the person stands by it', async () => {
    const page = await open('F7')
    await page.getByRole('heading', { name: /North 1/ }).waitFor()
    await press(page, 'Alt+T')
    await type(page, '38')
    await press(page, 'Enter')
    await page
      .getByText(/38 °F would lie near them/)
      .first()
      .waitFor()
    expect(await barriers(page)).toEqual([])
    await press(page, 'Alt+K')
    await page.getByRole('dialog', { name: 'North 1 is out of its limits' }).waitFor()
  })

  test('how long the ice lasts is told with its range and the constants it rests on', async () => {
    const page = await open('F7')
    await page.getByRole('heading', { name: /North 1/ }).waitFor()
    await press(page, 'Alt+Y')
    await page.getByLabel('Ice (kg)').fill('5')
    await page.getByLabel('Air around the cooler').fill('68F')
    await page.getByLabel('Heat gain (watts for each degree)').fill('0.5')
    await press(page, 'Enter')
    // By hand: 5 kg × 334 kJ/kg / 10 W = 46.4 h.
    await page.getByText(/About 46 h/).waitFor()
    await page.getByText(/Latent heat of ice 334 kJ\/kg/).waitFor()
    expect(await barriers(page)).toEqual([])
    await picture(page, 'cold-ice')
  })

  test('packing is answered, the class is chosen by the lead, and a signed manifest is corrected', async () => {
    const { desk, cooler, bags } = day
    await desk.ask('cooler.seal', { cooler, seal: 'WX-44871' })
    const destination = 'Basin Animal Disease Laboratory'
    const { handoff } = await desk.ask('handoff.begin', { destination, coolers: [cooler] })
    const page = await open('F9')
    await page.getByText('checklist not answered').waitFor()
    await press(page, 'Alt+K')
    await page.getByRole('dialog', { name: 'Packing checklist' }).waitFor()
    for (const group of await page.getByRole('dialog').getByRole('group').all())
      await group.getByText('done', { exact: true }).click()
    await page.getByLabel('Dry ice, net kilograms over all coolers').fill('2.5')
    expect(await barriers(page)).toEqual([])
    await picture(page, 'packing-checklist')
    await press(page, 'Enter')
    await page.getByText('9 of 9 steps answered').waitFor()

    await press(page, 'Alt+L')
    await page.getByRole('dialog', { name: 'Class for transport' }).waitFor()
    expect(await page.getByRole('dialog').innerText()).toMatch(/apparently healthy[\s\S]*NVSL/)
    expect(await page.getByRole('dialog').getByRole('radio', { checked: true }).count()).toBe(0)
    await choose(page, /Chosen with the carrier/, /Category B/)
    await page.getByLabel('Who at the carrier agreed').fill('Ms Orrin')
    await page.getByLabel('Rule or page it rests on').fill('49 CFR 173.199')
    expect(await barriers(page)).toEqual([])
    await picture(page, 'packing-class')
    await press(page, 'Enter')
    await page.getByText(/UN3373.*with Ms Orrin/).waitFor()

    await desk.ask('cooler.scanOut', {
      handoff,
      cooler,
      seal: 'WX-44871',
      celsius: 3.4,
      counted: 4,
      words: '',
    })
    await desk.ask('handoff.sign', {
      handoff,
      courier: { name: 'Tam Okoro', organisation: 'Basin Couriers', vehicle: 'grey van' },
      pin: leadPin,
      leadSignature: { how: 'on-paper' },
      courierSignature: { how: 'on-paper' },
    })
    await page.goto(`${page.url().split('#')[0]}#handoff/${handoff}`)
    await page.getByText('Tam Okoro has 1 cooler').waitFor()
    await press(page, 'Alt+K')
    await page.getByRole('dialog', { name: /Correct manifest/ }).waitFor()
    await scan(page, bags[3] ?? '')
    await page.getByLabel('Why is it put right?').fill('found on the bench')
    await page.getByLabel('PIN of Orla Vance').fill(leadPin)
    expect(await barriers(page)).toEqual([])
    await picture(page, 'manifest-correct')
    await press(page, 'Enter')
    await page.getByText(/corrected, edition 2/).waitFor()
    const { bench } = await desk.ask('coolers', {})
    expect(bench.map(({ bag }) => bag)).toEqual([bags[3]])
    expect(shown.complaints).toEqual([])
  })
})
