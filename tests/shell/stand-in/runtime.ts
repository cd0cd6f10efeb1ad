/** The Chromium behind the windows, and every request that its pages make. */
import type { Browser, BrowserContext, Request, Route } from 'playwright-core'
import { openChromium } from '../../loopback/support/chromium.ts'
import { toElectron } from './addresses.ts'
import { answer } from './protocol.ts'
import { mayRequest } from './session.ts'
import { WebContents } from './web-contents.ts'

let browser: Browser | undefined
let context: BrowserContext | undefined
const all: WebContents[] = []

/** Requests that no guard of the program stopped and that would have left it. */
export const escaped: string[] = []

export async function startRuntime(): Promise<void> {
  browser = await openChromium()
  context = await browser.newContext()
  await context.route('**/*', (route) => pass(route))
}

export async function stopRuntime(): Promise<void> {
  await browser?.close()
}

/** Opens a page, which by itself the program knows nothing of. */
export function openContents(preload?: string): WebContents {
  if (context === undefined) throw new Error('A window before the app is ready.')
  const contents = new WebContents(context.newPage(), preload)
  all.push(contents)
  return contents
}

function contentsOf(request: Request): WebContents | undefined {
  try {
    const page = request.frame().page()
    return all.find((contents) => contents.page === page)
  } catch {
    return undefined // A window that is still being opened has no frame yet.
  }
}

async function pass(route: Route): Promise<void> {
  const request = route.request()
  const url = toElectron(request.url())
  const contents = contentsOf(request)
  if (contents === undefined) return route.abort('failed')
  if (request.isNavigationRequest()) {
    const isMainFrame = request.frame().parentFrame() === null
    if (!contents.mayGo(url, isMainFrame)) return route.abort('aborted')
  }
  if (!mayRequest(url)) return route.abort('blockedbyclient')
  if (url.startsWith('app:')) return answer(route, url)
  escaped.push(url)
  await route.abort('internetdisconnected')
}
