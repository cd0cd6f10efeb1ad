import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest'
import { callChannel } from '../../electron/shell/channels.ts'
import { browserPath } from '../loopback/support/chromium.ts'
import { eventually } from '../loopback/support/eventually.ts'
import { createNotebookDesk } from '../loopback/support/notebook-desk.ts'
import { app, type BrowserWindow, machine } from './stand-in/electron.ts'
import { declared } from './stand-in/protocol.ts'
import { escaped, openContents } from './stand-in/runtime.ts'
import { isGranted, mayRequest } from './stand-in/session.ts'
import { CancellableEvent } from './stand-in/web-contents.ts'
import { forge, pageOf, shown, startShell, windowAt } from './support.ts'

const desk = vi.hoisted(() => ({ made: undefined as unknown }))
vi.mock('electron', () => import('./stand-in/electron.ts'))
vi.mock('../../electron/desk/desk.ts', () => ({ createDesk: () => desk.made }))

const notebook = createNotebookDesk()
/** Whether the program was still running when the log had been closed. */
let exitCodeAtClose: number | undefined | null = null
notebook.close = async () => {
  await new Promise((resolve) => setTimeout(resolve, 50))
  exitCodeAtClose = machine.exitCode
}
desk.made = notebook

function menuItem(label: string) {
  const items = machine.menu.flatMap(({ submenu }) => (Array.isArray(submenu) ? submenu : []))
  const item = items.find((each) => each.label === label)
  if (item === undefined) throw new Error(`There is no ${label} in the menu.`)
  return item
}

describe.skipIf(browserPath === undefined)('the Electron shell', () => {
  let first: BrowserWindow
  let page: Page

  beforeAll(async () => {
    first = await startShell('notebook')
    page = await pageOf(first)
  }, 60_000)
  afterAll(() => {
    if (machine.exitCode === undefined) app.exit()
  })

  const ask = (of: Page, name: string, input: unknown) =>
    of.evaluate(([n, i]) => window.ask(n as string, i), [name, input])

  describe('when it starts', () => {
    test('the page is shown, at the program’s own address, with every process in the sandbox', async () => {
      expect(machine.sandboxed).toBe(true)
      expect(declared()).toEqual({ standard: true, secure: true })
      expect(first.options.webPreferences).toMatchObject({
        sandbox: true,
        contextIsolation: true,
        nodeIntegration: false,
        webSecurity: true,
        webviewTag: false,
      })
      expect(await page.title()).toBe('Notebook')
      expect(machine.errors).toEqual([])
    })

    test('the page has the desk, and nothing else of the machine', async () => {
      const has = await page.evaluate(() => ({
        desk: Object.keys(window.duskline ?? {}),
        others: ['require', 'process', 'module', 'Buffer', 'electron'].filter((n) => n in window),
      }))
      expect(has).toEqual({ desk: ['call', 'watch'], others: [] })
    })
  })

  describe('a command', () => {
    test('goes to the desk and comes back', async () => {
      expect(await ask(page, 'person.signIn', 'Ada')).toBe(1)
      expect(await ask(page, 'who', {})).toBe('Ada')
    })

    test('that is refused comes back as a refusal, not as an error', async () => {
      await ask(page, 'no.such', {})
      expect(await page.textContent('#refusal')).toBe('No no.such. Ask for another.')
    })

    test('that meets a fault says so, and tells nothing of the machinery', async () => {
      const told = vi.spyOn(console, 'error').mockReturnValue()
      await ask(page, 'fault', {})
      expect(await page.textContent('#refusal')).toContain('fault of its own')
      expect(await page.textContent('#refusal')).not.toContain('SQLITE')
      expect(told).toHaveBeenCalledOnce()
      told.mockRestore()
    })
  })

  describe('a second window', () => {
    let second: Page

    beforeAll(async () => {
      menuItem('New window').click?.({} as never, undefined, {} as never)
      await shown(1)
      second = await pageOf(windowAt(1))
    })

    test('has a person of its own', async () => {
      await ask(page, 'person.signIn', 'Ada')
      expect(await ask(second, 'who', {})).toBe('nobody')
      await ask(second, 'person.signIn', 'Ben')
      expect(await ask(page, 'who', {})).toBe('Ada')
    })

    test('shows a change made in the first', async () => {
      await ask(page, 'note.add', 'a doe at the gate')
      await eventually(() => second.textContent('#notes')).toContain('Ada: a doe at the gate')
    })

    test('ends its session when it closes', async () => {
      const sessions = notebook.sessions.size
      windowAt(1).close()
      await eventually(() => notebook.sessions.size).toBe(sessions - 1)
    })

    test('opens too when the page asks for one, made by the program itself', async () => {
      await page.evaluate(() => window.open('/#line'))
      await shown(1)
      expect(first.webContents.opened.at(-1)?.response).toEqual({ action: 'deny' })
      windowAt(1).close()
      await eventually(() => machine.windows.length).toBe(1)
    })
  })

  describe('a page cannot', () => {
    test.each([
      'https://evil.example/',
      'https://duskline.test.evil.example/',
      'https://duskline.test@evil.example/',
      'https://duskline.test/other.html',
      'http://127.0.0.1:1/',
    ])('go to %s', async (url) => {
      await page.evaluate((to) => {
        location.href = to
      }, url)
      await page.waitForTimeout(200)
      expect(page.url()).toBe('https://duskline.test/')
      expect(await page.title()).toBe('Notebook')
      expect(escaped).toEqual([])
    })

    test.each(['https://evil.example/', 'https://duskline.test/other.html', 'about:blank'])(
      'open a window at %s',
      async (url) => {
        const before = first.webContents.opened.length
        await page.evaluate((to) => window.open(to), url)
        await eventually(() => first.webContents.opened.length).toBe(before + 1)
        const seen = url.replace('https://duskline.test', 'app://duskline')
        expect(first.webContents.opened.at(-1)).toEqual({
          url: seen,
          response: { action: 'deny' },
        })
        expect(escaped).toEqual([])
      },
    )

    test('fetch anything, not even from its own address', async () => {
      for (const url of ['https://evil.example/x', 'http://127.0.0.1:1/x', '/index.html'])
        expect(await page.evaluate((to) => fetch(to).catch(() => 'refused'), url)).toBe('refused')
      expect(escaped).toEqual([])
    })

    test.each([
      'https://evil.example/x',
      'http://localhost/',
      'wss://evil.example/',
      'file:///etc/passwd',
    ])('have %s fetched by the program itself', (url) => {
      expect(mayRequest(url)).toBe(false)
    })

    test.each(['will-redirect', 'will-attach-webview'])('get past the guard on %s', (event) => {
      const going = new CancellableEvent()
      first.webContents.emit(event, going)
      expect(going.prevented).toBe(true)
    })

    test('run a script that is not the program’s', async () => {
      const outcome = await page.evaluate(
        () =>
          new Promise((resolve) => {
            document.addEventListener(
              'securitypolicyviolation',
              (e) => resolve(e.violatedDirective),
              {
                once: true,
              },
            )
            const script = document.createElement('script')
            script.textContent = 'window.ran = true'
            document.body.append(script)
          }),
      )
      expect(outcome).toBe('script-src-elem')
      expect(await page.evaluate(() => 'ran' in window)).toBe(false)
    })

    test.each([
      'media',
      'geolocation',
      'notifications',
      'hid',
      'serial',
      'clipboard-read',
      'openExternal',
    ])('use %s', (permission) => {
      expect(isGranted(permission)).toBe(false)
    })

    test('use the camera, but for its picture in our own page', () => {
      const own = { isMainFrame: true, requestingUrl: 'app://duskline/#kits' }
      expect(isGranted('media', { ...own, mediaTypes: ['video'] })).toBe(true)
      expect(isGranted('media', { ...own, mediaType: 'video' })).toBe(true)
      for (const asked of [
        { ...own, mediaTypes: ['audio'] },
        { ...own, mediaTypes: ['video', 'audio'] },
        { ...own, mediaTypes: [] },
        { ...own, mediaTypes: ['video'], isMainFrame: false },
        { ...own, mediaTypes: ['video'], requestingUrl: 'https://example.org/' },
        { ...own, mediaTypes: ['video'], requestingUrl: 'app://duskline.example.org/' },
        own,
      ])
        expect(isGranted('media', asked)).toBe(false)
    })
  })

  describe('a PDF that the page holds', () => {
    test('opens in a plain window, without a way to the desk', async () => {
      await page.evaluate(() => {
        const blob = new Blob(['%PDF-1.4'], { type: 'application/pdf' })
        window.open(URL.createObjectURL(blob), '_blank', 'noopener')
      })
      await eventually(() => first.webContents.opened.at(-1)?.url).toMatch(
        /^blob:app:\/\/duskline\//,
      )
      const response = first.webContents.opened.at(-1)?.response
      expect(response?.action).toBe('allow')
      const given = response?.action === 'allow' ? response.overrideBrowserWindowOptions : undefined
      expect(given?.webPreferences).toMatchObject({ sandbox: true, contextIsolation: true })
      expect(given?.webPreferences).not.toHaveProperty('preload')
    })
  })

  describe('a message is refused, and the desk never hears of it,', () => {
    const notOurs = { ok: false, refusal: { code: 'not-our-page' } }

    test('when a frame inside the page sent it', async () => {
      await page.evaluate(() => {
        const frame = document.querySelector('iframe')
        if (frame) frame.src = URL.createObjectURL(new Blob(['<p>'], { type: 'text/html' }))
      })
      const isInside = (frame: { url: () => string }) => frame.url().startsWith('blob:')
      await eventually(() => page.frames().some(isInside)).toBe(true)
      const inside = page.frames().find(isInside)
      expect(inside && (await forge(inside, callChannel, 'note.add', 'forged'))).toMatchObject(
        notOurs,
      )
    })

    test('when a window sent it that the program did not open', async () => {
      const stray = openContents()
      await stray.load('app://duskline/')
      expect(await forge(await stray.ready, callChannel, 'note.add', 'forged')).toMatchObject(
        notOurs,
      )
    })

    test('when another page has taken the window’s place', async () => {
      await page.goto('about:blank')
      expect(await forge(page, callChannel, 'note.add', 'forged')).toMatchObject(notOurs)
      await first.loadURL('app://duskline/')
    })

    test.each([
      [[]],
      [['who']],
      [[1, {}]],
      [[{ name: 'who' }, {}]],
      [['', {}]],
      [['x'.repeat(101), {}]],
      [['who', {}, 'more']],
    ])('when it is not a name and an input: %j', async (message) => {
      const answer = await forge(page, callChannel, ...message)
      expect(answer).toMatchObject({ ok: false, refusal: { code: 'malformed-message' } })
    })

    test('when it is larger than any question to the desk', async () => {
      const answer = await forge(page, callChannel, 'note.add', `forged ${'x'.repeat(1_100_000)}`)
      expect(answer).toMatchObject({ ok: false, refusal: { code: 'malformed-message' } })
    })

    test('so that nothing forged was noted', () => {
      expect(notebook.notes.filter((note) => note.includes('forged'))).toEqual([])
    })
  })

  describe('a page whose process dies', () => {
    test('is loaded again, with the same person at the same desk', async () => {
      await ask(page, 'person.signIn', 'Ada')
      const loaded = page.waitForEvent('load')
      first.webContents.emit('render-process-gone', {}, { reason: 'crashed' })
      await loaded
      expect(await ask(page, 'who', {})).toBe('Ada')
    })

    test('again at once is left as it is, for it would die for ever', () => {
      const reload = vi.spyOn(first.webContents, 'reload')
      first.webContents.emit('render-process-gone', {}, { reason: 'oom' })
      expect(reload).not.toHaveBeenCalled()
      reload.mockRestore()
    })

    test('leaves word of which process it was and how it ended', () => {
      expect(notebook.faults).toContain('page crashed')
      expect(notebook.faults).toContain('page oom')
    })
  })

  test('the board for a screen outside opens from the menu, with a session of its own', async () => {
    menuItem('Board for a screen outside').click?.({} as never, undefined, {} as never)
    await shown(1)
    expect((await pageOf(windowAt(1))).url()).toBe('https://duskline.test/#board')
    windowAt(1).close()
    await eventually(() => machine.windows.length).toBe(1)
  })

  test.each([
    ['Offer a folder for backups…', 'offerBackupFolder'],
    ['Offer a folder of logs to merge…', 'offerLogsFolder'],
  ] as const)(
    '%s: one picked is offered to the desk, a closed dialog offers nothing',
    async (label, deed) => {
      const offered = vi.spyOn(notebook, deed)
      const pick = () => menuItem(label).click?.({} as never, undefined, {} as never)
      machine.picksFolder = undefined
      pick()
      machine.picksFolder = '/media/stick'
      pick()
      await eventually(() => offered.mock.calls).toEqual([['/media/stick']])
    },
  )

  test('a log opened from the desktop of macOS brings the window to the front, and changes no log', () => {
    const { focused } = first
    const event = { preventDefault: vi.fn() }
    app.emit('open-file', event, '/Users/lead/Desktop/other.stationlog')
    expect(event.preventDefault).toHaveBeenCalled()
    expect(first.focused).toBe(focused + 1)
  })

  test('a second start brings the window to the front instead', () => {
    const { focused } = first
    app.emit('second-instance')
    expect(first.focused).toBe(focused + 1)
    expect(machine.windows).toHaveLength(1)
  })

  test('closing the last window closes the log, then the program', async () => {
    expect(exitCodeAtClose).toBeNull()
    first.close()
    await eventually(() => machine.exitCode).toBe(0)
    expect(exitCodeAtClose).toBeUndefined()
    expect(notebook.sessions.size).toBe(0)
    // Where the window stood is kept for the next start.
    const state = JSON.parse(readFileSync(join(machine.userData, 'window.json'), 'utf8'))
    expect(state).toMatchObject({ width: 1360, height: 900, maximized: false })
  })
})
