/** The close of practice days against the faults that were planted in them. */
import { mkdtempSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, test } from 'vitest'
import { practiceDay } from '../../electron/station/practice/plan.ts'
import { found, type LookedOver, offByCount, offByPlanted, planted, playToClose } from './faults.ts'
import { folderForFile } from './played.ts'

const folder = folderForFile()
const days = [1, 2, 3, 4, 5, 6, 7, 8]
const animals = 30

describe.each(days)('the close of practice day %i', (seed) => {
  let played: LookedOver
  beforeAll(async () => {
    played = await playToClose(mkdtempSync(join(folder, 'day-')), { seed, animals })
  }, 120_000)

  test('shows as variances what the planted faults put off, and nothing else', () => {
    const { script, close } = played
    expect(offByCount(close)).toEqual(offByPlanted(script))
    expect(script.faults.length).toBeGreaterThan(1)
  })

  test('names each planted fault as the likeliest cause, and invents none', () => {
    const { script, close } = played
    expect(found(close)).toEqual(planted(script))
  })
})

test('the practice days plant every kind of fault between them', () => {
  const kinds = days.flatMap((seed) =>
    practiceDay({ seed, animals, desks: 1 }).flatMap(({ faults }) =>
      faults.map(({ code }) => code),
    ),
  )
  expect(new Set(kinds).size).toBe(8)
})
