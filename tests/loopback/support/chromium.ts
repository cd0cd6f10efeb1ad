/** A real Chromium for tests that need one. */
import { type Browser, chromium } from 'playwright-core'
import { findBrowser } from '../../../build/browser.ts'
import { sandboxFlags } from '../../../electron/loopback/app-window.ts'

/** The browser of this computer; tests that need one are skipped by name where there is none. */
export const browserPath = findBrowser()

/** Starts the browser, unseen. */
export function openChromium(): Promise<Browser> {
  return chromium.launch({
    executablePath: browserPath,
    args: [...sandboxFlags(), '--disable-dev-shm-usage'],
  })
}
