/** A page of a real Chromium as the main process of Electron would hold it. */
import { EventEmitter } from 'node:events'
import type { HandlerDetails, WindowOpenHandlerResponse } from 'electron'
import type { Frame, Page } from 'playwright-core'
import { toChromium, toElectron } from './addresses.ts'
import { ipcMain } from './ipc-main.ts'
import { preloadScript } from './preload-world.ts'

type OpenHandler = (details: Pick<HandlerDetails, 'url'>) => WindowOpenHandlerResponse

/** A frame as Electron's `senderFrame` tells of it. */
async function frameOf(frame: Frame) {
  return {
    origin: toElectron(await frame.evaluate(() => self.origin)),
    parent: frame.parentFrame(),
    detached: frame.isDetached(),
  }
}

export class WebContents extends EventEmitter {
  /** Known once `ready`; Electron has it at once. */
  page: Page | undefined
  readonly ready: Promise<Page>
  /** The address that the main process itself is loading: no event asks about that one. */
  loading: string | undefined
  openHandler: OpenHandler = () => ({ action: 'allow' })
  /** What became of each attempt to open a window. */
  readonly opened: { url: string; response: WindowOpenHandlerResponse }[] = []

  constructor(opening: Promise<Page>, preload: string | undefined) {
    super()
    this.ready = opening.then((page) => this.connect(page, preload))
  }

  setWindowOpenHandler(handler: OpenHandler): void {
    this.openHandler = handler
  }

  /** Lets every frame of the page reach the main process, as a compromised one would. */
  private async connect(page: Page, preload: string | undefined): Promise<Page> {
    this.page = page
    await this.watchOpening(page)
    await page.exposeBinding('invokeMain', async ({ frame }, channel, args) =>
      ipcMain.receive(channel, { sender: this, senderFrame: await frameOf(frame) }, args),
    )
    if (preload !== undefined) await page.addInitScript(preloadScript(preload))
    return page
  }

  async load(url: string): Promise<void> {
    this.loading = url
    await (await this.ready).goto(toChromium(url))
  }

  reload(): void {
    void this.page?.reload()
  }

  send(channel: string, ...args: unknown[]): void {
    const hear = ([name, news]: [string, unknown[]]) =>
      (window as unknown as { hearMain?: (name: string, news: unknown[]) => void }).hearMain?.(
        name,
        news,
      )
    this.page?.evaluate(hear, [channel, args] as [string, unknown[]]).catch(() => undefined)
  }

  /** Asks whether a frame may go somewhere. */
  mayGo(url: string, isMainFrame: boolean): boolean {
    if (isMainFrame && url === this.loading) return true
    const going = new CancellableEvent()
    this.emit('will-frame-navigate', Object.assign(going, { url, isMainFrame }))
    return !going.prevented
  }

  /** Chromium tells the address before the window is there, and Playwright when it is. */
  private async watchOpening(page: Page): Promise<void> {
    const devtools = await page.context().newCDPSession(page)
    await devtools.send('Page.enable')
    devtools.on('Page.windowOpen', (opening) => {
      const url = toElectron(opening.url)
      this.opened.push({ url, response: this.openHandler({ url }) })
    })
    page.on('popup', (popup) => {
      if (this.opened.at(-1)?.response.action === 'deny') void popup.close()
    })
  }
}

export class CancellableEvent {
  prevented = false
  preventDefault(): void {
    this.prevented = true
  }
}
