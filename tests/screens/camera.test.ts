/** The camera as a scanner: a real browser whose camera sees a real label, under the real policy. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Canvas, createCanvas } from '@napi-rs/canvas'
import { chromium } from 'playwright-core'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { sandboxFlags } from '../../electron/loopback/app-window.ts'
import { browserPath } from '../loopback/support/chromium.ts'
import { drawnPages } from '../print/read-pdf.ts'
import { leadPin, openStation } from '../support/desk.ts'
import { press, signIn } from './support/hands.ts'
import { barriers, picture } from './support/look.ts'
import { type ShownDesk, smallLaptop, startDesk } from './support/start-desk.ts'

const size = { width: 640, height: 480 }

/** A label on a table, as a camera's film: YUV4MPEG2, each picture its brightness and no colour. */
function filmOf(label: Canvas): Buffer {
  const canvas = createCanvas(size.width, size.height)
  const pen = canvas.getContext('2d')
  pen.fillStyle = '#ddd'
  pen.fillRect(0, 0, size.width, size.height)
  pen.drawImage(label, 100, 120)
  const { data } = pen.getImageData(0, 0, size.width, size.height)
  const bright = Buffer.from(data.filter((_, place) => place % 4 === 0))
  const colour = Buffer.alloc((size.width * size.height) / 2, 128)
  const head = `YUV4MPEG2 W${size.width} H${size.height} F5:1 Ip A1:1 C420\n`
  const frame = Buffer.concat([Buffer.from('FRAME\n'), bright, colour])
  return Buffer.concat([Buffer.from(head), frame, frame])
}

describe.skipIf(browserPath === undefined)('a camera', () => {
  let shown: ShownDesk
  let folder: string
  let film: string

  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'duskline-camera-'))
    film = join(folder, 'label.y4m')
    const { desk } = await openStation()
    const { pdf } = await desk.ask('labels.printKits', {
      for: { whom: 'reserve', count: 1 },
      stock: 'roll-51x25',
    })
    const [label] = await drawnPages(new Uint8Array(Buffer.from(pdf.base64, 'base64')), 203)
    if (label) writeFileSync(film, filmOf(label))
    shown = await startDesk(desk)
  })
  afterEach(async () => {
    await shown.stop()
    rmSync(folder, { recursive: true, force: true })
  })

  test('reads a label held before it as a scanner would, once', async () => {
    const browser = await chromium.launch({
      executablePath: browserPath,
      args: [
        ...sandboxFlags(),
        '--disable-dev-shm-usage',
        '--use-fake-device-for-media-stream',
        '--use-fake-ui-for-media-stream',
        `--use-file-for-fake-video-capture=${film}`,
      ],
    })
    const page = await (await browser.newContext({ viewport: smallLaptop })).newPage()
    const complaints: string[] = []
    page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()))
    await page.goto(shown.url())
    await signIn(page, 'Orla Vance', leadPin)
    await press(page, 'F6')
    await page.getByRole('heading', { name: /Numbered kits/ }).waitFor()
    await page.getByRole('button', { name: 'Camera' }).click()
    await page.getByRole('dialog', { name: /^Kit 26-KRV-A0001/ }).waitFor({ timeout: 60_000 })
    expect(await barriers(page)).toEqual([])
    await picture(page, 'camera')
    // It is still held there, and the dialog it opened can be closed all the same.
    await press(page, 'Escape')
    await page.getByRole('dialog', { name: /^Kit 26-KRV/ }).waitFor({ state: 'detached' })
    await page.waitForFunction(() => document.querySelector('video')?.readyState === 4)
    expect(await page.getByRole('dialog').count()).toBe(0)
    await page.getByRole('button', { name: 'Camera off' }).click()
    await page.locator('video').waitFor({ state: 'detached' })
    expect(complaints).toEqual([])
    await browser.close()
  })

  test('is offered only where there is one', async () => {
    const { page } = shown
    await signIn(page, 'Orla Vance', leadPin)
    await page.locator('.scan-strip').waitFor()
    await page.waitForFunction(async () => {
      const found = await navigator.mediaDevices.enumerateDevices()
      return !found.some(({ kind }) => kind === 'videoinput')
    })
    expect(await page.getByRole('button', { name: 'Camera' }).count()).toBe(0)
  })

  test('leaves the page as strict as it was: it cannot compile WebAssembly itself', async () => {
    const outcome = await shown.page.evaluate(async () => {
      const empty = new Uint8Array([0, 97, 115, 109, 1, 0, 0, 0])
      return WebAssembly.compile(empty).then(
        () => 'compiled',
        (fault: unknown) => (fault instanceof Error ? fault.name : ''),
      )
    })
    expect(outcome).toBe('CompileError')
  })
})
