/** Practice days of three desks, each closed by itself, and the station's close over their merged log. */
import { mkdtempSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, test } from 'vitest'
import { mergeLogs } from '../../db/merge/merge.ts'
import { readDesk } from '../../electron/desk/read-desk.ts'
import { nobodysDesk } from '../../shared-types/sample-number.ts'
import type { StationCloseView } from '../../shared-types/views/station-close.ts'
import { entriesOf, folderForFile, ofKind, play, value } from './played.ts'

const folder = folderForFile()

describe.each([1, 2])('the station’s close of practice day %i', (seed) => {
  let seen: StationCloseView
  /** Off by so much, by what the desks themselves signed. */
  const off = new Map<string, number>()
  beforeAll(async () => {
    const desks = await play(folder, { seed, animals: 45, desks: 3 })
    for (const { log } of desks)
      for (const { item, expected, counted } of ofKind(entriesOf(log), 'day.closed').at(-1)?.body
        .items ?? []) {
        const key = item.of.startsWith('kits')
          ? 'kits'
          : item.of === 'bags'
            ? `bags:${item.cooler}`
            : item.of
        off.set(key, (off.get(key) ?? 0) + counted - expected)
      }
    const out = join(mkdtempSync(join(folder, 'office-')), 'station.merged')
    value(mergeLogs({ out, files: desks.map(({ log }) => log), office: nobodysDesk }))
    const office = value(readDesk(out, () => Math.max(...desks.map(({ endMs }) => endMs))))
    seen = value(await office.ask('stationClose', {}))
    office.close()
  }, 120_000)

  test('names three desks, who closed each, and the one that was reopened', () => {
    expect(seen.desks.map(({ state }) => state)).toEqual(['closed', 'closed', 'closed'])
    expect(seen.desks.every(({ lead, closedMs }) => lead !== null && closedMs !== null)).toBe(true)
    expect(seen.desks[0]?.amended.join()).toContain('reopened')
  })

  test('leaves over all desks what they signed for between them, and nothing else', () => {
    const left = Object.fromEntries(seen.items.map(({ key, variance }) => [key, variance]))
    expect(left).toEqual(Object.fromEntries([...off].map(([key, sum]) => [key, sum])))
    expect(seen.totals?.checkedIn).toBe(45)
  })
})
