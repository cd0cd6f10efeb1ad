import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { tourSteps } from '../../shared-types/help/tour.ts'
import { browserPath } from '../loopback/support/chromium.ts'
import { checkIn, leadPin, openStation } from '../support/desk.ts'
import { focused, press, signIn } from './support/hands.ts'
import { barriers, picture } from './support/look.ts'
import { type ShownDesk, startDesk } from './support/start-desk.ts'

const dialog = ({ page }: ShownDesk) => page.getByRole('dialog', { name: 'Help' })

async function opened(isToured: boolean): Promise<ShownDesk> {
  const { desk } = await openStation()
  await checkIn(desk)
  const shown = await startDesk(desk, { isToured })
  await signIn(shown.page, 'Orla Vance', leadPin)
  await shown.page.getByRole('list', { name: /^Animals waiting/ }).waitFor()
  return shown
}

describe.skipIf(browserPath === undefined)('help where you are', () => {
  let shown: ShownDesk
  beforeEach(async () => {
    shown = await opened(true)
  })
  afterEach(() => shown.stop())

  test('F1 shows the keys that answer here, as they are', async () => {
    await press(shown.page, 'F1')
    await dialog(shown).waitFor()
    const map = dialog(shown).getByRole('region', { name: 'Keys here, now' })
    await expect.poll(() => map.innerText()).toMatch(/F3\s+Check-in/)
    const words = await map.innerText()
    for (const line of [/Ctrl\+K\s+Find/, /Ctrl\+L\s+Change person/, /s\s+Story/, /F1\s+Help/])
      expect(words).toMatch(line)
    expect(words).not.toMatch(/Ctrl\+P/)
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'help-keys')
    await shown.page.setViewportSize({ width: 1920, height: 1080 })
    await picture(shown.page, 'help-keys-1920')
    await press(shown.page, 'Escape')
    await expect.poll(() => dialog(shown).count()).toBe(0)
    await expect.poll(() => focused(shown.page)).toContain('A0001')
  })

  test('from a refusal F1 leads to the reason and the page, also over an open dialog', async () => {
    await press(shown.page, 'l')
    const leaving = shown.page.getByRole('dialog', { name: 'The hunter of A0001 leaves' })
    await leaving.waitFor()
    await press(shown.page, 'Enter')
    await expect.poll(() => leaving.locator('[data-refusal]').count()).toBe(1)
    await press(shown.page, 'F1')
    await dialog(shown).waitFor()
    await expect.poll(() => dialog(shown).innerText()).toMatch(/Why the desk refused/)
    expect(await barriers(shown.page)).toEqual([])
    await picture(shown.page, 'help-refusal')
    await press(shown.page, 'Escape')
    await expect.poll(() => dialog(shown).count()).toBe(0)
    expect(await leaving.count()).toBe(1)
  })

  test('the link beside a refusal opens the same page', async () => {
    await press(shown.page, 'Control+K')
    await expect.poll(() => focused(shown.page)).toBe('')
    await shown.page.keyboard.type('26KRVA9999A0', { delay: 45 })
    await press(shown.page, 'Enter')
    const why = shown.page.getByRole('button', { name: 'Why?' })
    await why.waitFor()
    await why.click()
    await dialog(shown).waitFor()
    await expect.poll(() => dialog(shown).innerText()).toMatch(/Code of this refusal/)
  })

  test('a guide is printed from help', async () => {
    await press(shown.page, 'F1')
    await dialog(shown).waitFor()
    await expect.poll(() => shown.page.locator('[role=dialog]:focus-within').count()).toBe(1)
    const opening = shown.page.context().waitForEvent('page')
    await press(shown.page, 'Alt+2')
    await opening
    await shown.page.getByText('guide-sampler.pdf').waitFor()
  })
})

describe.skipIf(browserPath === undefined)('the tour', () => {
  test('is shown once on a laptop, by keyboard, and the screen goes on working beneath it', async () => {
    const shown = await opened(false)
    try {
      const tour = shown.page.getByRole('region', { name: 'First time here' })
      for (const [place, step] of tourSteps.entries()) {
        await expect.poll(() => tour.innerText()).toContain(step.title)
        await expect.poll(() => tour.innerText()).toContain(`Step ${place + 1} of 5`)
        expect(await shown.page.locator('.tour-marked').count()).toBe(1)
        if (place === 0) {
          expect(await barriers(shown.page)).toEqual([])
          await picture(shown.page, 'tour')
        }
        await press(shown.page, 'Alt+H')
      }
      await expect.poll(() => tour.count()).toBe(0)
      const again = await shown.openWindow()
      await signIn(again, 'Orla Vance', leadPin)
      await again.getByRole('list', { name: /^Animals waiting/ }).waitFor()
      expect(await again.getByRole('region', { name: 'First time here' }).count()).toBe(0)
    } finally {
      await shown.stop()
    }
  })

  test('can be skipped at a key', async () => {
    const shown = await opened(false)
    try {
      const tour = shown.page.getByRole('region', { name: 'First time here' })
      await tour.waitFor()
      await press(shown.page, 'Alt+Q')
      await expect.poll(() => tour.count()).toBe(0)
    } finally {
      await shown.stop()
    }
  })
})
