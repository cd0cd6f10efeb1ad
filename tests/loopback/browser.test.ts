import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { browserPath, openChromium } from './support/chromium.ts'
import { eventually } from './support/eventually.ts'
import { comeIn, type Hosted, host } from './support/hosted.ts'
import { buildNotebookPage } from './support/page/built.ts'

/** One empty page, the least that the browser's own viewer shows. */
const pdf = Buffer.from(
  `%PDF-1.4
1 0 obj<</Type/Catalog/Pages 2 0 R>>endobj
2 0 obj<</Type/Pages/Kids[3 0 R]/Count 1>>endobj
3 0 obj<</Type/Page/Parent 2 0 R/MediaBox[0 0 200 200]>>endobj
trailer<</Root 1 0 R>>
%%EOF`,
).toString('base64')

describe.skipIf(browserPath === undefined)('in a browser', () => {
  let screens: string
  let browser: Browser
  let context: BrowserContext
  let desk: Hosted

  beforeAll(async () => {
    screens = await buildNotebookPage()
    browser = await openChromium()
    context = await browser.newContext()
    desk = await host({ screens, graceMs: 2000 })
  })
  afterAll(async () => {
    await browser.close()
    await desk.close()
  })

  /** Opens a window with a one-time address and notes what the browser complains of. */
  async function openWindow(): Promise<{ page: Page; complaints: string[] }> {
    const page = await context.newPage()
    const complaints: string[] = []
    page.on('console', (message) => {
      if (message.type() === 'error') complaints.push(message.text())
    })
    await page.goto(desk.newUrl())
    return { page, complaints }
  }

  const ask = (page: Page, name: string, input: unknown) =>
    page.evaluate(([n, i]) => window.ask(n as string, i), [name, input])

  test('the screens open, at an address without the token, and nothing is blocked', async () => {
    const { page, complaints } = await openWindow()
    await eventually(() => page.textContent('#who')).toBe('nobody')
    expect(page.url()).toBe(`${desk.origin}/`)
    expect(complaints).toEqual([])
    await page.close()
  })

  test('a change in one window appears in the other', async () => {
    const { page: left } = await openWindow()
    const { page: right } = await openWindow()
    await ask(left, 'note.add', 'a doe at the gate')
    await eventually(() => right.textContent('#notes')).toContain('a doe at the gate')
    await Promise.all([left.close(), right.close()])
  })

  test('a change of person in one window leaves the other alone, even when opened from it', async () => {
    const { page: left } = await openWindow()
    await ask(left, 'person.signIn', 'Ada')
    const opening = context.waitForEvent('page')
    await left.evaluate(() => window.open('/'))
    const right = await opening
    await eventually(() => right.textContent('#who')).toBe('nobody')
    await ask(right, 'person.signIn', 'Ben')
    expect(await ask(left, 'who', {})).toBe('Ada')
    await Promise.all([left.close(), right.close()])
  })

  test('a PDF opens in a frame and in a window of its own', async () => {
    const { page, complaints } = await openWindow()
    await page.evaluate((base64) => window.showPdf(base64), pdf)
    const url = await page.getAttribute('#document', 'src')
    await eventually(() => page.frames().map((frame) => frame.url())).toContain(url)
    const opening = context.waitForEvent('page')
    await page.evaluate((blob) => window.open(blob ?? '', '_blank', 'noopener'), url)
    expect((await opening).url()).toBe(url)
    expect(complaints).toEqual([])
    await page.close()
  })

  test('a desk that stops is known to be gone, and what it may have missed is said', async () => {
    const stopping = await host({ screens })
    const page = await context.newPage()
    await page.goto(stopping.newUrl())
    await stopping.close()
    await eventually(() => page.textContent('#reach')).toBe('does not answer')
    await ask(page, 'note.add', 'kept or not?')
    expect(await page.textContent('#refusal')).toContain('it is not certain that this was kept')
    await page.close()
  })

  test('a window whose line broke shows afterwards what it missed', async () => {
    const sameKeys = { screens, randomBytes: (n: number) => new Uint8Array(n).fill(7) }
    const before = await host(sameKeys)
    const page = await context.newPage()
    await page.goto(before.newUrl())
    await before.close()
    await eventually(() => page.textContent('#reach')).toBe('does not answer')
    await before.desk.call(before.desk.openSession(), 'note.add', 'a buck meanwhile')
    const after = await host({ ...sameKeys, desk: before.desk, port: before.port })
    await comeIn(after)
    await eventually(() => page.textContent('#notes')).toContain('a buck')
    expect(await page.textContent('#reach')).toBe('answers')
    await page.close()
    await after.close()
  })

  describe('a hostile page on another port of this computer', () => {
    let hostile: Server
    let page: Page

    beforeAll(async () => {
      hostile = createServer((_request, response) => {
        response.setHeader('Content-Type', 'text/html').end('<!doctype html><title>Other</title>')
      })
      await new Promise<void>((resolve) => hostile.listen(0, '127.0.0.1', resolve))
      await openWindow()
      page = await context.newPage()
      await page.goto(`http://127.0.0.1:${(hostile.address() as AddressInfo).port}/`)
    })
    afterAll(() => hostile.close())

    test.each(['cors', 'no-cors'] as const)('cannot send a command (%s)', async (mode) => {
      const before = desk.desk.notes.length
      const url = `${desk.origin}/call/note.add?window=12345678`
      await page.evaluate(
        async ([to, how]) => {
          const headers = { 'Content-Type': how === 'cors' ? 'application/json' : 'text/plain' }
          const credentials = 'include'
          const mode = how as RequestMode
          await fetch(to ?? '', { method: 'POST', mode, credentials, headers, body: '"x"' }).catch(
            () => undefined,
          )
        },
        [url, mode],
      )
      expect(desk.desk.notes.length).toBe(before)
    })

    test('cannot send one by a form', async () => {
      const before = desk.desk.notes.length
      const other = await context.newPage()
      await other.goto(page.url())
      const answered = other.waitForResponse((response) => response.url().startsWith(desk.origin))
      await other.evaluate((to) => {
        document.body.innerHTML = `<form method="post" enctype="text/plain" action="${to}"></form>`
        document.forms[0]?.submit()
      }, `${desk.origin}/call/note.add?window=12345678`)
      expect((await answered).status()).toBe(403)
      expect(desk.desk.notes.length).toBe(before)
      await other.close()
    })

    test('cannot hear the news', async () => {
      const outcome = await page.evaluate(
        (url) =>
          new Promise((resolve) => {
            const source = new EventSource(url, { withCredentials: true })
            source.onopen = () => resolve('heard')
            source.onerror = () => resolve('refused')
          }),
        `${desk.origin}/changes?window=12345678`,
      )
      expect(outcome).toBe('refused')
    })

    test('cannot frame the screens', async () => {
      const answered = page.waitForResponse(`${desk.origin}/`)
      await page.evaluate((origin) => {
        document.body.innerHTML = `<iframe src="${origin}/"></iframe>`
      }, desk.origin)
      expect((await answered).status()).toBe(403)
      expect(page.frames().map((frame) => frame.url())).not.toContain(`${desk.origin}/`)
    })

    test.each(['script', 'img'])('cannot use a part of them (%s)', async (tag) => {
      const outcome = await page.evaluate(
        ([name, url]) =>
          new Promise((resolve) => {
            const part = document.createElement(name as 'script' | 'img')
            part.onload = () => resolve('loaded')
            part.onerror = () => resolve('refused')
            part.src = url ?? ''
            document.body.append(part)
          }),
        [tag, `${desk.origin}/`],
      )
      expect(outcome).toBe('refused')
    })
  })
})
