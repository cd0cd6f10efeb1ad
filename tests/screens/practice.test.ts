import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import type { PracticeRole } from '../../shared-types/practice.ts'
import { browserPath } from '../loopback/support/chromium.ts'
import { TestDesk } from '../support/desk.ts'
import { focused, press } from './support/hands.ts'
import { barriers, picture } from './support/look.ts'
import { type ShownDesk, startDesk } from './support/start-desk.ts'

describe.skipIf(browserPath === undefined)('a live practice morning', () => {
  let shown: ShownDesk
  beforeEach(async () => {
    const desk = new TestDesk()
    // In the afternoon, so that the morning lies wholly before the laptop's time.
    desk.wait(480)
    shown = await startDesk(desk)
  })
  afterEach(() => shown.stop())

  const bar = () => shown.page.getByRole('region', { name: 'PRACTICE' })
  const live = async () => (await shown.desk.ask('practice', {})).live

  /** Begins by keyboard alone. */
  async function begin(role: PracticeRole) {
    const { page } = shown
    await expect.poll(() => focused(page)).toContain('Set up a station')
    await press(page, 'l')
    await page.getByRole('dialog', { name: 'Practise one role' }).waitFor()
    await expect.poll(() => page.locator('[role=dialog] input:focus').count()).toBe(1)
    expect(await barriers(page)).toEqual([])
    await picture(page, `practice-begin`)
    await press(page, { 'check-in': '1', bench: '2', lead: '3' }[role])
    await page.getByRole('button', { name: 'Begin' }).press('Enter')
    await bar().waitFor({ timeout: 60_000 })
  }

  /** The laptop's clock goes on until it is so; the crew looks up by itself. */
  async function until(isSo: () => Promise<boolean>) {
    await expect
      .poll(
        async () => {
          shown.desk.now += 4000
          return isSo()
        },
        { timeout: 60_000, interval: 200 },
      )
      .toBe(true)
  }

  test('at the window: the hunter speaks, time runs, a pause holds it, the score names its entries', async () => {
    const { page, desk } = shown
    await begin('check-in')
    await expect.poll(() => bar().innerText()).toContain('You do: check-in')
    await until(async () => (await live())?.atWindow !== null)
    await expect.poll(() => bar().innerText()).toMatch(/The tag reads T\d+/)
    await picture(page, 'practice-window')
    expect(await barriers(page)).toEqual([])
    await press(page, 'Control+, Control+,')
    await expect.poll(() => bar().innerText()).toContain('1×')
    await press(page, 'Control+J')
    await expect.poll(() => bar().innerText()).toContain('paused')
    const before = (await live())?.minute
    desk.now += 60_000
    expect((await live())?.minute).toBe(before)
    await press(page, 'Control+J')
    await expect.poll(() => bar().innerText()).toContain('1×')
    await press(page, 'Control+M')
    const score = page.getByRole('dialog', { name: /of 100$/ })
    await score.waitFor()
    expect(await barriers(page)).toEqual([])
    await press(page, 'Alt+Q')
    await expect.poll(() => bar().innerText()).toContain('The morning is over')
    await picture(page, 'practice-score')
    expect(shown.complaints).toEqual([])
  })

  test('at the bench: what lies under the knife is drawn, labels on the table are scanned at a key', async () => {
    const { page } = shown
    await begin('bench')
    await until(async () => (await live())?.underKnife !== null)
    await press(page, 'F4')
    await expect.poll(() => bar().innerText()).toMatch(/Under your knife, left node/)
    await picture(page, 'practice-bench')
    await page.setViewportSize({ width: 1920, height: 1080 })
    await picture(page, 'practice-bench-1920')
    expect(await barriers(page)).toEqual([])
    await page.getByRole('heading', { name: 'Scan the kit' }).waitFor()
    await press(page, 'Alt+7')
    await page.getByText('What do you see and feel?').waitFor()
  })

  test('as lead: the crew works what it is given', async () => {
    const { page, desk } = shown
    await begin('lead')
    await until(async () => (await desk.ask('practice', {})).live?.come !== 0)
    await until(async () => (await page.getByText(/min over|min left/).count()) > 0)
    await picture(page, 'practice-lead')
    expect(await barriers(page)).toEqual([])
  })
})
