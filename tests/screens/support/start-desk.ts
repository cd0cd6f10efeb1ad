/** The real screens on the real desk over the real loopback, in a real browser, on a clock of the test. */
import { randomBytes } from 'node:crypto'
import { join } from 'node:path'
import type { BrowserContext, Page } from 'playwright-core'
import { root } from '../../../build/steps.ts'
import { serveLoopback } from '../../../electron/loopback/server.ts'
import { openChromium } from '../../loopback/support/chromium.ts'
import { TestDesk } from '../../support/desk.ts'

export interface ShownDesk {
  /** The desk behind the screens; its own session is one more window. */
  readonly desk: TestDesk
  readonly folder: string
  /** An address that opens one window, once. */
  readonly url: () => string
  /** The first window. */
  readonly page: Page
  /** One more window, in a browser profile of its own. */
  readonly openWindow: () => Promise<Page>
  /** The desk's program ends while its windows stay. */
  readonly silence: () => Promise<void>
  /** What the browser complained of in any window: it should stay empty. */
  readonly complaints: readonly string[]
  readonly stop: () => Promise<void>
}

/** The smallest screen that everything must fit on. */
export const smallLaptop = { width: 1366, height: 768 }

/**
 * Serves a desk, a new one with no log unless one is given, and opens a window on it. Its people have
 * been shown round before, unless the story is about that.
 */
export async function startDesk(
  desk: TestDesk = new TestDesk(),
  { isToured = true } = {},
): Promise<ShownDesk> {
  if (isToured) await desk.desk.call(desk.desk.openSession(), 'tour.take', {})
  const host = await serveLoopback({
    desk: desk.desk,
    screens: join(root, 'dist/renderer'),
    randomBytes,
    port: 0,
    graceMs: 2000,
    onLastClosed: () => {},
  })
  const browser = await openChromium()
  const complaints: string[] = []
  const openWindow = async () => {
    const context = await browser.newContext({ viewport: smallLaptop })
    context.setDefaultTimeout(10_000)
    listenForComplaints(context, complaints)
    const page = await context.newPage()
    await page.goto(host.newUrl())
    return page
  }
  return {
    desk,
    folder: desk.folder,
    url: host.newUrl,
    page: await openWindow(),
    openWindow,
    complaints,
    silence: host.close,
    async stop() {
      await browser.close()
      await host.close()
      await desk.end()
    },
  }
}

function listenForComplaints(context: BrowserContext, complaints: string[]): void {
  context.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text())
  })
  context.on('weberror', (fault) => complaints.push(String(fault.error())))
}
