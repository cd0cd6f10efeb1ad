/** What a person does with keyboard and scanner. */
import type { Page } from 'playwright-core'
import { crewPin } from '../../support/desk.ts'

/** Keys one after another, as written on them: `ArrowDown Enter Control+K`. */
export async function press(page: Page, keys: string): Promise<void> {
  for (const key of keys.split(' ')) await page.keyboard.press(key, { delay: 45 })
}

/** Typing at a person's pace, which no scanner shares. */
export async function type(page: Page, text: string): Promise<void> {
  await page.keyboard.type(text, { delay: 45 })
}

/** A keyboard-wedge scanner: every character 4 ms after the last, then Enter. */
export async function scan(page: Page, text: string): Promise<void> {
  const keys = [...[...text].map((key) => ({ key, text: key })), { key: 'Enter', text: '\r' }]
  const devtools = await page.context().newCDPSession(page)
  const start = Date.now() / 1000
  for (const [place, { key, text: typed }] of keys.entries()) {
    const timestamp = start + place * 0.004
    const code = key === 'Enter' ? { windowsVirtualKeyCode: 13 } : {}
    const event = { key, text: typed, timestamp, ...code }
    await devtools.send('Input.dispatchKeyEvent', { type: 'keyDown', ...event })
    await devtools.send('Input.dispatchKeyEvent', { type: 'keyUp', key, timestamp })
  }
  await devtools.detach()
}

/** Signs a person in at a window by their tile and PIN. */
export async function signIn(page: Page, name: string, pin = crewPin): Promise<void> {
  await page.getByRole('radio', { name: new RegExp(`^${name}`) }).click()
  await page.getByLabel(`PIN of ${name}`).fill(pin)
  await page.keyboard.press('Enter')
  await page.getByRole('navigation', { name: 'Screens' }).waitFor()
}

/** What has the focus, by its accessible words. */
export function focused(page: Page): Promise<string> {
  return page.evaluate(() => {
    const element = document.activeElement
    const label = element instanceof HTMLInputElement ? element.labels?.[0]?.innerText : undefined
    return label ?? element?.textContent ?? ''
  })
}
