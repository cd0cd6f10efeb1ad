import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest'
import { browserPath } from '../loopback/support/chromium.ts'
import { eventually } from '../loopback/support/eventually.ts'
import { setUpInput } from '../support/desk.ts'
import { app, machine } from './stand-in/electron.ts'
import { pageOf, startShell } from './support.ts'

vi.mock('electron', () => import('./stand-in/electron.ts'))

describe.skipIf(browserPath === undefined)('the whole program in the shell', () => {
  let page: Page
  const complaints: string[] = []

  beforeAll(async () => {
    page = await pageOf(await startShell('real'))
    page.on('console', (message) => {
      if (message.type() === 'error') complaints.push(message.text())
    })
    await page.reload()
  }, 60_000)
  afterAll(() => app.exit())

  test('shows the first screen, and nothing of it is blocked', async () => {
    await eventually(() => page.locator('h1').count()).toBeGreaterThan(0)
    expect(complaints).toEqual([])
    expect(machine.errors).toEqual([])
  })

  test('keeps the laptop awake while a log is open, and no longer', async () => {
    expect(machine.keptAwake.size).toBe(0)
    const ask = (name: string, input: unknown) =>
      page.evaluate(([n, i]) => window.duskline?.call(n as string, i), [name, input] as const)
    expect(await ask('station.setUp', setUpInput)).toMatchObject({ ok: true })
    await eventually(() => machine.keptAwake.size).toBe(1)
    expect(await ask('shelf.shut', {})).toMatchObject({ ok: true })
    await eventually(() => machine.keptAwake.size).toBe(0)
  })

  test('has the desk of the station behind it', async () => {
    const shelf = await page.evaluate(() => window.duskline?.call('shelf.look', {}))
    expect(shelf).toMatchObject({ ok: true, value: {} })
    const unknown = await page.evaluate(() => window.duskline?.call('__proto__', {}))
    expect(unknown).toMatchObject({ ok: false })
  })
})
