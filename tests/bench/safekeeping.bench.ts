/** What safekeeping costs at the desk: a start over a long log, and a command while a backup is made. */
import { randomBytes } from 'node:crypto'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser } from 'playwright-core'
import { buildStale, screens } from '../../build/bundles.ts'
import { root } from '../../build/steps.ts'
import { serveLoopback } from '../../electron/loopback/server.ts'
import { browserPath, openChromium } from '../loopback/support/chromium.ts'
import { plainScreens } from '../loopback/support/hosted.ts'
import { checkIn, factsOf, leadPin, type TestDesk } from '../support/desk.ts'
import { deskWith } from './desk.bench.ts'
import { alone, type Figure, ms, type Timing } from './measure.ts'

function median(of: readonly number[]): number {
  return of.toSorted((a, b) => a - b)[Math.floor(of.length / 2)] ?? 0
}

async function timeOf(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now()
  await work()
  return performance.now() - start
}

function served(desk: TestDesk, screens: string) {
  const { desk: behind } = desk
  return serveLoopback({
    desk: behind,
    screens,
    randomBytes,
    port: 0,
    graceMs: 60_000,
    onLastClosed: () => {},
  })
}

/** From nothing open to a line that can be worked: open the log, load the screens, sign in. */
async function startOnce(browser: Browser, desk: TestDesk, file: string, url: () => string) {
  await desk.ask('shelf.shut', {})
  const page = await browser.newPage()
  const opening = await timeOf(() => desk.ask('shelf.open', { file }))
  const loading = await timeOf(async () => {
    await page.goto(url())
    await page.getByRole('radio', { name: /^Orla Vance/ }).waitFor()
  })
  await page.getByRole('radio', { name: /^Orla Vance/ }).click()
  await page.getByLabel('PIN of Orla Vance').fill(leadPin)
  const signing = await timeOf(async () => {
    await page.keyboard.press('Enter')
    await page.getByRole('navigation', { name: 'Screens' }).waitFor()
    await page.getByRole('heading', { level: 2 }).first().waitFor()
  })
  await page.close()
  return opening + loading + signing
}

async function startFigure(desk: TestDesk): Promise<Figure> {
  const what = 'start to a usable line, over 10,000 animals in the log, more than an empty page'
  const target = 'under 1 s more'
  if (browserPath === undefined)
    return { what, figure: 'not measured: no browser', target, met: null }
  await buildStale(root, [screens])
  for (let waiting = 0; waiting < 40; waiting += 1) await checkIn(desk)
  const file = (await desk.ask('shelf.look', {})).open ?? ''
  const [ours, empty] = [
    await served(desk, join(root, 'dist/renderer')),
    await served(desk, plainScreens()),
  ]
  const browser = await openChromium()
  const [starts, baselines]: [number[], number[]] = [[], []]
  for (let run = 0; run < 6; run += 1) {
    const page = await browser.newPage()
    baselines.push(await timeOf(() => page.goto(empty.newUrl())))
    await page.close()
    starts.push(await startOnce(browser, desk, file, ours.newUrl))
  }
  await browser.close()
  await Promise.all([ours.close(), empty.close()])
  const [start, baseline] = [median(starts), median(baselines)]
  return {
    what,
    figure: `${ms(start - baseline)} more (${ms(start)} against ${ms(baseline)}, p50 of 6)`,
    target,
    met: start - baseline < 1000,
  }
}

/**
 * Check-ins while backups are made: one upon the other, which is worse than it ever is, or with the pause
 * that the desk leaves after each, nine times as long as the copy took.
 */
async function whileBackingUp(desk: TestDesk, runs: number, pauses: 0 | 9): Promise<Timing> {
  let isOver = false
  const backups = (async () => {
    while (!isOver) {
      const took = await timeOf(() => desk.ask('backup.now', {}))
      for (let waited = 0; waited < pauses * took && !isOver; waited += 5)
        await new Promise((resolve) => setTimeout(resolve, 5))
    }
  })()
  const timing = await alone(runs, () => command(desk))
  isOver = true
  await backups
  return timing
}

async function command(desk: TestDesk): Promise<unknown> {
  // A person is never faster than this, and the other thread's answers are heard in between.
  await new Promise((resolve) => setImmediate(resolve))
  return desk.desk.call(desk.session, 'animal.checkIn', { facts: factsOf(), contact: null })
}

async function backupFigures(desk: TestDesk): Promise<Figure[]> {
  const stick = mkdtempSync(join(tmpdir(), 'duskline-stick-'))
  desk.desk.offerBackupFolder(stick)
  const place = (await desk.ask('backup', {})).others[0]?.mark ?? ''
  await desk.ask('backup.choose', { place })
  await alone(50, () => command(desk))
  const [quiet, paced, dense]: [number[], number[], number[]] = [[], [], []]
  for (let round = 0; round < 5; round += 1) {
    quiet.push((await alone(200, () => command(desk))).p95)
    paced.push((await whileBackingUp(desk, 2000, 9)).p95)
    dense.push((await whileBackingUp(desk, 200, 0)).p95)
  }
  rmSync(stick, { recursive: true, force: true })
  const against = (busy: readonly number[]) =>
    `${(median(busy) / median(quiet)).toFixed(2)}x (${ms(median(busy))} against ${ms(median(quiet))})`
  return [
    {
      what: 'check-in while backups of over 10,000 animals are made at the pace of the desk, against none (p95)',
      figure: against(paced),
      target: 'under 2x',
      met: median(paced) / median(quiet) < 2,
    },
    {
      what: 'the same, one backup upon the other without a pause (p95)',
      figure: against(dense),
      target: 'reported',
      met: null,
    },
  ]
}

export async function safekeepingFigures(): Promise<Figure[]> {
  const { desk, log } = await deskWith(10_000)
  log.close()
  // The start first: the other figure leaves a line of two thousand behind.
  const start = await startFigure(desk)
  const { people } = await desk.ask('people', {})
  await desk.ask('person.signIn', { person: people[0]?.person ?? '', pin: leadPin })
  const figures = [start, ...(await backupFigures(desk))]
  await desk.end()
  return figures
}
