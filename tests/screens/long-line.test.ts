import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { browserPath } from '../loopback/support/chromium.ts'
import { checkIn, leadPin, openStation } from '../support/desk.ts'
import { focused, press, signIn } from './support/hands.ts'
import { barriers, picture } from './support/look.ts'
import { type ShownDesk, startDesk } from './support/start-desk.ts'

/** Enough that they stand far beyond what a screen shows; the bench measures thousands. */
const many = 300

describe.skipIf(browserPath === undefined)('a long line', () => {
  let shown: ShownDesk
  beforeEach(async () => {
    const { desk } = await openStation()
    for (let each = 0; each < many; each += 1) await checkIn(desk)
    shown = await startDesk(desk)
    await signIn(shown.page, 'Orla Vance', leadPin)
    await rows().first().waitFor()
  })
  afterEach(() => shown.stop())

  const list = () => shown.page.getByRole('list', { name: /^Animals waiting/ })
  const rows = () => list().getByRole('button')
  const last = `A0${many}`

  test('draws the rows in sight, and tells screen readers how many there are', async () => {
    await expect.poll(() => rows().count()).toBeLessThan(40)
    const first = list().getByRole('listitem').first()
    expect(await first.getAttribute('aria-setsize')).toBe(String(many))
    expect(await first.getAttribute('aria-posinset')).toBe('1')
    expect(await barriers(shown.page)).toEqual([])
  })

  test('End and Home carry the focus to rows that were not drawn, into sight', async () => {
    await expect.poll(() => focused(shown.page)).toContain('A0001')
    await press(shown.page, 'End')
    await expect.poll(() => focused(shown.page)).toContain(last)
    const row = rows().filter({ hasText: last })
    await expect
      .poll(async () => (await row.boundingBox())?.y ?? Number.POSITIVE_INFINITY)
      .toBeLessThan(768)
    await picture(shown.page, 'line-long')
    await press(shown.page, 'Home')
    await expect.poll(() => focused(shown.page)).toContain('A0001')
    await press(shown.page, 'PageDown ArrowDown')
    await expect.poll(() => focused(shown.page)).toContain('A0010')
  })

  test('a row keeps the focus while it is scrolled out of sight, and its keys act', async () => {
    await expect.poll(() => focused(shown.page)).toContain('A0001')
    await list().evaluate((element) => element.parentElement?.scrollTo(0, 9000))
    const lowest = list().getByRole('listitem').last()
    await expect
      .poll(async () => Number(await lowest.getAttribute('aria-posinset')))
      .toBeGreaterThan(100)
    expect(await focused(shown.page)).toContain('A0001')
    await press(shown.page, 's')
    await shown.page.getByRole('dialog', { name: 'The story of A0001' }).waitFor()
  })
})
