import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Download } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { practiceHerds, practiceOutlines } from '../../electron/station/practice/unit-outlines.ts'
import { browserPath } from '../loopback/support/chromium.ts'
import { openStation } from '../support/desk.ts'
import { playSeason, reportAll, type Season } from '../support/season.ts'
import { focused, press, signIn, type } from './support/hands.ts'
import { barriers, picture } from './support/look.ts'
import { type ShownDesk, startDesk } from './support/start-desk.ts'

// One morning at the office, in the order in which it happens: each test goes on where the last ended.
describe.skipIf(browserPath === undefined)('coverage at the office', () => {
  let shown: ShownDesk
  let season: Season
  const folder = mkdtempSync(join(tmpdir(), 'duskline-coverage-'))

  beforeAll(async () => {
    season = await playSeason(folder, { desks: 2, animals: 120 })
    reportAll(season)
    shown = await startDesk(season.desk)
    await shown.page
      .getByLabel(/^PIN of/)
      .or(shown.page.getByRole('radio').first())
      .first()
      .waitFor()
  }, 180_000)
  afterAll(async () => {
    season.log.close()
    await shown.stop()
    rmSync(folder, { recursive: true, force: true })
  })

  const heading = (name: string | RegExp) => shown.page.getByRole('heading', { name })
  const button = (name: string | RegExp) => shown.page.getByRole('button', { name })

  async function saved(deed: () => Promise<void>): Promise<{ name: string; text: Buffer }> {
    const [download]: [Download, void] = await Promise.all([
      shown.page.waitForEvent('download'),
      deed(),
    ])
    return { name: download.suggestedFilename(), text: readFileSync(await download.path()) }
  }

  test('before a design is set, the screen says that nothing is proved', async () => {
    await shown.page.getByRole('radio', { name: /^Ada Moor/ }).click()
    await shown.page.getByLabel('PIN of Ada Moor').fill('4821')
    await press(shown.page, 'Enter')
    await shown.page.getByRole('navigation', { name: 'Screens' }).waitFor()
    await press(shown.page, 'Alt+v')
    await heading('What the samples prove').waitFor()
    await shown.page.getByText('No design is set, so nothing is proved yet.').waitFor()
    await expect.poll(() => focused(shown.page)).toMatch(/^P1 Pellamy Ridge/)
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'coverage-no-plan')
  })

  test('the office sets the design, a herd and outlines of units, by keyboard', async () => {
    await press(shown.page, 'Alt+d')
    await expect.poll(() => focused(shown.page)).toBe('Design prevalence, %')
    await type(shown.page, '5')
    await press(shown.page, 'Tab')
    await type(shown.page, '0')
    await press(shown.page, 'Tab')
    await type(shown.page, '90')
    await press(shown.page, 'Alt+k')
    await expect.poll(() => focused(shown.page)).toBe('Sensitivity of the test, %')
    await shown.page.getByText('per cent: over 0, at most 100').waitFor()
    await press(shown.page, 'Control+a')
    await type(shown.page, '98')
    await shown.page.getByLabel('Unit P1, mule deer: herd').fill('60')
    await shown.page.getByLabel('Unit P1, mule deer: harvested').fill('31')
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'coverage-plan')
    await shown.page.getByLabel('Or take them from a table (CSV)').setInputFiles({
      name: 'units.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(`${practiceHerds}P4,goat,7,,\n`),
    })
    await shown.page.getByText('Row 8: "goat" is no species that is sampled here.').waitFor()
    await press(shown.page, 'Alt+r')
    await shown.page.getByText(/^6 rows stand in the table/).waitFor()
    await shown.page.getByLabel('Outlines (GeoJSON)').setInputFiles({
      name: 'units.geojson',
      mimeType: 'application/geo+json',
      buffer: Buffer.from(practiceOutlines),
    })
    await button('Take these outlines').waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await press(shown.page, 'Alt+o')
    await shown.page.getByText('5 in this record').waitFor()
    await press(shown.page, 'Alt+k')
    await heading('What the samples prove').waitFor()
    const { plan } = await shown.desk.ask('coverage', {})
    expect(plan?.design).toEqual({ prevalence: 0.05, sensitivity: 0.98, confidence: 0.9 })
    expect(plan?.numbers).toHaveLength(6)
    expect(plan?.numbers).toContainEqual({
      unit: 'P1',
      species: 'mule-deer',
      population: 420,
      harvested: 96,
      goal: null,
    })
  })

  test('every unit has its state in a shape and a word, and each figure opens to formula and source', async () => {
    await expect.poll(() => focused(shown.page)).toMatch(/^P1 Pellamy Ridge/)
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'coverage')
    await press(shown.page, 'Enter')
    await expect.poll(() => focused(shown.page)).toMatch(/^(Harvested|Checked in)/)
    const labels = await shown.page.locator('#coverage-figures button').allInnerTexts()
    expect(labels.length).toBeGreaterThan(7)
    for (const label of labels) {
      await expect.poll(() => focused(shown.page)).toBe(label.replace(/\n/g, ''))
      await press(shown.page, 'Enter')
      await heading('Formula').waitFor()
      await heading('Source').waitFor()
      await press(shown.page, 'Escape')
      await heading('Formula').waitFor({ state: 'detached' })
      await expect.poll(() => focused(shown.page)).toBe(label.replace(/\n/g, ''))
      await press(shown.page, 'ArrowDown')
    }
    await button(/^Chance it would have been found/).press('Enter')
    await heading('Numbers put in').waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'coverage-figure')
    await press(shown.page, 'Escape')
    await heading('Formula').waitFor({ state: 'detached' })
  })

  test('the table is saved as CSV, and the pictures as SVG and PNG', async () => {
    const table = await saved(() => press(shown.page, 'Alt+s'))
    expect(table.name).toMatch(/^practice-coverage-.*\.csv$/)
    expect(table.text.toString()).toContain('probability_of_detection')
    await press(shown.page, 'Alt+p')
    await heading('Coverage in pictures').waitFor()
    await heading('Days from the courier to the result').waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'coverage-pictures')
    for (const name of ['Samples against the target', 'Map of units', 'over time', 'Days from'])
      expect(await shown.page.getByRole('img', { name: new RegExp(name) }).count()).toBe(1)
    await heading(/^Map of units/).evaluate((seen) => seen.scrollIntoView())
    await picture(shown.page, 'coverage-map')
    await heading(/over time$/).evaluate((seen) => seen.scrollIntoView())
    await picture(shown.page, 'coverage-times')
    const svg = await saved(() => button(/^Save as SVG: Map of units/).click())
    expect(svg.name).toBe('coverage-map.svg')
    expect(svg.text.toString()).toMatch(/^<svg [^>]*xmlns="http:\/\/www\.w3\.org\/2000\/svg"/)
    expect(svg.text.toString()).not.toContain('var(--')
    const png = await saved(() => button(/^Save as PNG: Samples against/).click())
    expect(png.name).toBe('coverage-target.png')
    expect(png.text.subarray(1, 4).toString()).toBe('PNG')
    expect(png.text.length).toBeGreaterThan(5000)
    await press(shown.page, 'Escape')
    await heading('What the samples prove').waitFor()
    expect(shown.complaints).toEqual([])
  })
})

describe.skipIf(browserPath === undefined)('coverage during the weekend', () => {
  let shown: ShownDesk

  beforeAll(async () => {
    const { desk } = await openStation()
    await desk.ask('coverage.plan', {
      plan: {
        design: { prevalence: 0.01, sensitivity: 0.98, confidence: 0.95 },
        ages: ['adult'],
        weights: [],
        numbers: [
          { unit: '12', species: 'mule-deer', population: null, harvested: null, goal: 14 },
        ],
      },
    })
    shown = await startDesk(desk)
    await signIn(shown.page, 'Bo Quill')
  })
  afterAll(() => shown.stop())

  test('the check-in screen says what the unit still needs, once its code is given', async () => {
    await press(shown.page, 'F3')
    await expect.poll(() => focused(shown.page)).toContain('Hunter id')
    const unit = shown.page.getByLabel('Unit', { exact: true })
    await unit.fill('14')
    expect(await shown.page.getByText(/^This unit needs/).count()).toBe(0)
    await unit.fill('12')
    await shown.page.getByText('This unit needs 14 more adults (mule deer).').waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'coverage-check-in')
  })

  test('a volunteer may look at coverage, and is told who sets the design', async () => {
    await press(shown.page, 'Alt+v')
    await shown.page.getByRole('heading', { name: 'What the samples prove' }).waitFor()
    await press(shown.page, 'Alt+d')
    await shown.page.getByText('a station lead or the office sets the design').waitFor()
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'coverage-look-only')
  })
})
