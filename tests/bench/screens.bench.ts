/** The screens: from a key to the painted change, how long lists scroll, what the program weighs at start. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import type { Page } from 'playwright-core'
import { root } from '../../build/steps.ts'
import { browserPath } from '../loopback/support/chromium.ts'
import { signIn } from '../screens/support/hands.ts'
import { type ShownDesk, startDesk } from '../screens/support/start-desk.ts'
import { checkIn, leadPin, openStation, type TestDesk } from '../support/desk.ts'
import { deskWith } from './desk.bench.ts'
import { type Figure, ms } from './measure.ts'

const keys = 60
const waiting = 40
const longLine = 5000

/**
 * Notes how long each key takes until what it changed is painted: frames pass until the focus, the
 * field or the document has changed, and the figure is taken once that frame is on its way out.
 */
const noteKeys = `
  window.painted = []
  addEventListener('keydown', ({ timeStamp }) => {
    const focused = document.activeElement
    const value = focused && focused.value
    let isChanged = false
    const changes = new MutationObserver(() => { isChanged = true })
    changes.observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true })
    const frame = () => {
      const now = document.activeElement
      if (!isChanged && now === focused && (!now || now.value === value)) return requestAnimationFrame(frame)
      changes.disconnect()
      const channel = new MessageChannel()
      channel.port1.onmessage = () => window.painted.push(performance.now() - timeStamp)
      channel.port2.postMessage(0)
    }
    requestAnimationFrame(frame)
  }, { capture: true })
`

/** Settles once so many keys were painted; the page's own policy allows no other way of waiting. */
const paintedKeys = (count: number) =>
  `new Promise((done) => { const look = () => window.painted.length >= ${count} ? done() : setTimeout(look, 5); look() })`

function p95(samples: readonly number[]): number {
  return samples.toSorted((a, b) => a - b)[Math.floor((samples.length - 1) * 0.95)] ?? 0
}

async function painted(page: Page, press: (at: number) => Promise<void>): Promise<number> {
  await page.evaluate('window.painted = []')
  for (let at = 0; at < keys; at += 1) {
    await press(at)
    await page.evaluate(paintedKeys(at + 1))
  }
  return p95((await page.evaluate('window.painted')) as number[])
}

/** The same on a page that does nothing but move a mark: what browser and machine take by themselves. */
async function bareFigure(shown: ShownDesk): Promise<number> {
  const page = await shown.page.context().newPage()
  await page.setContent('<body><p id="mark">0</p></body>')
  await page.evaluate(
    `${noteKeys}; addEventListener('keydown', () => { mark.textContent = String(Number(mark.textContent) + 1) })`,
  )
  const bare = await painted(page, () => page.keyboard.press('ArrowDown'))
  await page.close()
  return bare
}

async function shownTo(desk: TestDesk): Promise<ShownDesk> {
  const shown = await startDesk(desk)
  await signIn(shown.page, 'Orla Vance', leadPin)
  await shown.page.getByRole('list', { name: /^Animals waiting/ }).waitFor()
  await shown.page.evaluate(noteKeys)
  return shown
}

/** Down the line and up again, so that each key moves the choice. */
const arrow = (page: Page) => (at: number) =>
  page.keyboard.press(Math.floor(at / 20) % 2 === 0 ? 'ArrowDown' : 'ArrowUp')

async function keyFigure(): Promise<Figure> {
  const { desk, log } = await deskWith(10_000)
  log.close()
  for (let each = 0; each < waiting; each += 1) await checkIn(desk)
  const shown = await shownTo(desk)
  const { page } = shown
  const bare = await bareFigure(shown)
  const line = await painted(page, arrow(page))
  await page.keyboard.press('Control+K')
  const letters = 't2000'
  const typing = await painted(page, (at) =>
    page.keyboard.press(at % 10 < 5 ? (letters[at % 5] ?? 't') : 'Backspace', { delay: 50 }),
  )
  await shown.stop()
  const worst = Math.max(line, typing)
  return {
    what: 'key to painted change, p95, on a log of 10,000 animals: along the line, letters in the find box',
    figure: `${ms(line)} and ${ms(typing)} (${(worst / bare).toFixed(1)}x a bare page beside it, ${ms(bare)})`,
    target: 'under 50 ms',
    met: worst < 50,
  }
}

/** The time between two frames while the list is scrolled from end to end. */
const scrollThrough = `new Promise((done) => {
  const room = document.querySelector('.waiting-room')
  const gaps = []
  let last = performance.now()
  const step = (now) => {
    gaps.push(now - last)
    last = now
    room.scrollTop += 400
    if (gaps.length < 120) requestAnimationFrame(step)
    else done(gaps.slice(2))
  }
  requestAnimationFrame(step)
})`

async function longLineFigure(): Promise<Figure> {
  const { desk } = await openStation()
  for (let each = 0; each < longLine; each += 1) await checkIn(desk)
  const shown = await shownTo(desk)
  const { page } = shown
  // The forecasts of so many waiting are computed once before anything is measured.
  await page.getByText('turn:').first().waitFor({ timeout: 120_000 })
  const bare = await bareFigure(shown)
  const key = await painted(page, arrow(page))
  const gap = p95((await page.evaluate(scrollThrough)) as number[])
  const rows = await page.locator('.waiting-row').count()
  await shown.stop()
  return {
    what: `a line of ${longLine.toLocaleString('en')} rows (${rows} drawn): key to painted change and time between frames while it scrolls, p95`,
    figure: `${ms(key)} (${(key / bare).toFixed(1)}x a bare page beside it, ${ms(bare)}), ${ms(gap)}`,
    target: 'a key under 4x the bare page; frames reported',
    met: key < bare * 4,
  }
}

/** Kilobytes that a window loads before it shows anything, as they are and compressed. */
function weightFigure(): Figure {
  const folder = join(root, 'dist/renderer/assets')
  const files = readdirSync(folder).map((name) => ({
    name,
    bytes: readFileSync(join(folder, name)),
  }))
  const isFirst = ({ name }: { name: string }) => /^index-.*\.(js|css)$/.test(name)
  const weigh = (some: typeof files) => {
    const raw = some.reduce((sum, { bytes }) => sum + bytes.length, 0)
    const packed = some.reduce((sum, { bytes }) => sum + gzipSync(bytes).length, 0)
    return `${Math.round(raw / 1024)} kB, ${Math.round(packed / 1024)} kB compressed`
  }
  const later = files.filter((file) => !isFirst(file) && /\.(js|css)$/.test(file.name))
  return {
    what: 'what a window loads at its start, and what only when it is asked for',
    figure: `${weigh(files.filter(isFirst))}; ${weigh(later)}`,
    target: 'reported',
    met: null,
  }
}

/** From opening a window to the first thing painted in it. */
async function startFigure(): Promise<Figure> {
  const { desk } = await openStation()
  const shown = await startDesk(desk)
  const paints: number[] = []
  for (let each = 0; each < 7; each += 1) {
    const page = await shown.openWindow()
    await page.getByRole('heading', { level: 1 }).first().waitFor()
    const at = `performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? 0`
    paints.push(await page.evaluate(at))
    await page.context().close()
  }
  await shown.stop()
  return {
    what: 'from opening a window to its first painted words, p50 of 7 cold windows',
    figure: ms(paints.toSorted((a, b) => a - b)[3] ?? 0),
    target: 'reported',
    met: null,
  }
}

export async function screenFigures(): Promise<Figure[]> {
  if (browserPath === undefined)
    return [{ what: 'the screens', figure: 'no browser here', target: 'reported', met: null }]
  return [await keyFigure(), await longLineFigure(), weightFigure(), await startFigure()]
}
