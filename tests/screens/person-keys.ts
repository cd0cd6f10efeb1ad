import type { Page } from 'playwright-core'

/** A person's keys lie further apart than a scanner's, which come within 35 ms. */
const personMs = 45

/** A person's hands on the keyboard, which can be counted. */
export interface PersonKeys {
  /** Presses keys one by one, by their names: `press('y', 'Enter')`. */
  readonly press: (...keys: string[]) => Promise<void>
  readonly type: (text: string) => Promise<void>
  /** Keys pressed since the last time it was asked; scans are not among them. */
  readonly counted: () => number
}

export function personKeys(page: Page): PersonKeys {
  let keys = 0
  async function press(...names: string[]) {
    for (const name of names) {
      keys += 1
      await page.keyboard.press(name)
      await page.waitForTimeout(personMs)
    }
  }
  return {
    press,
    type: (text) => press(...text),
    counted() {
      const count = keys
      keys = 0
      return count
    },
  }
}
