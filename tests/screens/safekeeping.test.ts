import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { browserPath } from '../loopback/support/chromium.ts'
import { checkIn, leadPin, openStation } from '../support/desk.ts'
import { signIn } from './support/hands.ts'
import { barriers, picture } from './support/look.ts'
import { type ShownDesk, startDesk } from './support/start-desk.ts'

describe.skipIf(browserPath === undefined)('safekeeping, on the screen of a lead', () => {
  let shown: ShownDesk

  beforeAll(async () => {
    const { desk } = await openStation()
    desk.desk.offerBackupFolder(mkdtempSync(join(tmpdir(), 'duskline-stick-')))
    shown = await startDesk(desk)
    await signIn(shown.page, 'Orla Vance', leadPin)
    await shown.page.keyboard.press('F10')
    await shown.page.getByRole('heading', { name: /^Crew/ }).waitFor()
    await shown.page.keyboard.press('Alt+k')
    await shown.page.getByRole('heading', { name: 'Safekeeping' }).waitFor()
  })
  afterAll(() => shown.stop())

  test('says that without a backup a lost laptop is a lost day, and takes the first stick offered', async () => {
    const { page } = shown
    await page.getByText('if this laptop is lost, so is the day').waitFor()
    await picture(page, 'safekeeping-none')
    await page.getByRole('button', { name: /Keep backups on/ }).click()
    await page.getByText(/Last good copy/).waitFor()
    expect(await barriers(page)).toEqual([])
  })

  test('tries the backup and tells that it is whole', async () => {
    const { page } = shown
    await page.getByRole('button', { name: 'Try the backup' }).click()
    await page.getByText(/Restored for a try: \d+ entries, whole/).waitFor()
    await picture(page, 'safekeeping')
  })

  test('shows the report before it is sent', async () => {
    const { page } = shown
    await page.getByRole('button', { name: 'Show the report' }).click()
    expect(await page.getByLabel('Report', { exact: true }).inputValue()).toContain(
      'Duskline report',
    )
    expect(await barriers(page)).toEqual([])
  })

  test('the board outside shows numbers and no hunter, with nobody signed in', async () => {
    const animal = await checkIn(shown.desk, { hunter: 'H77120' })
    const board = await shown.openWindow()
    await board.evaluate(() => {
      location.hash = '#board'
    })
    await board.reload()
    await board.getByRole('heading', { name: 'Next, in this order' }).waitFor()
    expect((await board.textContent('main'))?.replaceAll(/\s|-/g, '')).toContain(animal.slice(6))
    expect(await board.textContent('main')).not.toContain('H77120')
    expect(await barriers(board)).toEqual([])
    await picture(board, 'board')
  })

  test('and the browser complained of nothing', () => {
    expect(shown.complaints).toEqual([])
  })
})
