/** The station's close from a terminal: over a merged log, read and never added to. */
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { pageTexts } from '../print/read-pdf.ts'
import { closeDay } from '../support/close.ts'
import { type DeskAtWork, merge, oneDeer, twoDesks } from '../support/two-desks.ts'
import { TestDesk } from '../support/desk.ts'
import { answer, duskline } from './run.ts'

let both: { a: DeskAtWork; c: DeskAtWork }
const office = new TestDesk()
const merged = join(office.folder, 'weekend.stationlog')
const made = (name: string) => join(office.folder, name)

beforeAll(async () => {
  both = await twoDesks()
  await oneDeer(both.a, 'T100')
  await closeDay(both.a.desk, { 'blank-labels': -3 })
  await closeDay(both.c.desk)
  merge(office, [both.a, both.c])
}, 60_000)
afterAll(async () => {
  for (const desk of [both.a.desk, both.c.desk, office]) await desk.end()
})

test('close on a merged log tells the desks and what is left, and leaves a sheet and an exit code', async () => {
  const before = readFileSync(merged)
  const said = await duskline('close', merged, '--out', made('station.pdf'))
  expect(said.code).toBe(1)
  expect(said.out).toContain('desk 26KRVA: closed by Orla Vance')
  expect(said.out).toMatch(/Blank labels left: 1\d{3} of 1\d{3}, NO REASON GIVEN/)
  expect(said.err).toContain('left over all desks')
  const [page] = await pageTexts(new Uint8Array(readFileSync(made('station.pdf'))))
  expect(page).toContain('Station close sheet')
  expect(page).toContain('26KRVC')
  expect(readFileSync(merged)).toEqual(before)
})

test('a machine gets the whole view, for one station and day', async () => {
  const one = ['--station', '26krv', '--date', '2026-11-14', '--out', made('again.pdf'), '--json']
  const { value } = answer(await duskline('close', merged, ...one))
  expect(value).toMatchObject({ close: { day: { station: '26KRV', desks: 2 }, signed: null } })
  const none = await duskline('close', merged, '--station', '26PQR', '--out', made('none.pdf'))
  expect(none.code).toBe(1)
  expect(none.err).toContain('No desk of that station has opened that day.')
  expect(existsSync(made('none.pdf'))).toBe(false)
})
