import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { browserPath } from '../loopback/support/chromium.ts'
import { openStation } from '../support/desk.ts'
import { press, signIn } from './support/hands.ts'
import { barriers, picture } from './support/look.ts'
import { type ShownDesk, startDesk } from './support/start-desk.ts'

describe.skipIf(browserPath === undefined)('the tissue guide at the bench', () => {
  let shown: ShownDesk
  beforeEach(async () => {
    const { desk } = await openStation()
    shown = await startDesk(desk)
    await signIn(shown.page, 'Ines Tarr')
    await press(shown.page, 'F4')
    await shown.page.getByRole('button', { name: 'Tissue guide' }).waitFor()
    await press(shown.page, 'Alt+A')
    await guide().waitFor()
  })
  afterEach(() => shown.stop())

  const guide = () => shown.page.getByRole('dialog', { name: /^Where the nodes lie/ })

  test('shows where the nodes lie, left and right as the animal has them', async () => {
    const drawing = guide().getByRole('img', { name: /the animal’s left node is at the right/ })
    const at = async (words: string) => (await drawing.getByText(words).boundingBox())?.x ?? 0
    expect(await at('LEFT node')).toBeGreaterThan(await at('RIGHT node'))
    expect(await barriers(shown.page)).toEqual([])
    for (const [width, height] of [
      [1366, 768],
      [1920, 1080],
    ] as const) {
      await shown.page.setViewportSize({ width, height })
      await picture(shown.page, `tissue-guide-${width}`)
    }
    await shown.page.evaluate(() => document.documentElement.setAttribute('data-light', 'night'))
    await guide().evaluate((element) => element.scrollIntoView({ block: 'end' }))
    await picture(shown.page, 'tissue-guide-foot')
    expect(await barriers(shown.page)).toEqual([])
  })

  // Williams K et al. 2019, PLoS ONE 14(10): e0223659: 5 minutes in a 40% dilution of household bleach.
  test('tells a node from what is not, and how tools are cleaned, with concentration, time and source', async () => {
    const words = await guide().innerText()
    expect(words).toMatch(/lymph node.*salivary gland.*muscle.*fat/s)
    expect(words).toMatch(
      /5 minutes in 2 parts household bleach to 3 parts water \(Williams 2019\)/,
    )
    expect(words).toMatch(/Gloves and eye protection on/)
    expect(2 / (2 + 3)).toBe(0.4)
    await press(shown.page, 'Alt+N')
    await press(shown.page, 'Escape')
    await expect.poll(() => guide().count()).toBe(0)
  })
})
