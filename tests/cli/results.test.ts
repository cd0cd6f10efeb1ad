import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { type Delivered, delivered, plainFile, readIn } from '../support/delivered.ts'
import { answer, digest, duskline } from './run.ts'

const scratch = mkdtempSync(join(tmpdir(), 'duskline-results-'))
afterAll(() => rmSync(scratch, { recursive: true, force: true }))

let at: Delivered
beforeAll(async () => {
  at = await delivered(2)
}, 60_000)
afterAll(() => at?.desk.end())

const bag = (place: number, side: 'left' | 'right') => at.animals[place]?.[side] ?? ''

function file(name: string, text: string): string {
  const path = join(scratch, name)
  writeFileSync(path, text)
  return path
}

describe('results at the terminal', () => {
  test('a file is not checked before the screen was told how that laboratory writes', async () => {
    const path = file('first.csv', plainFile([[bag(0, 'left'), 'Not detected']]))
    const refused = await duskline('check-results', path, at.desk.file)
    expect(refused.code).toBe(1)
    expect(refused.err).toContain('No laboratory file was read into this log yet.')
  })

  test('then it is checked as the last one was read, and nothing is written', async () => {
    await readIn(at.desk, plainFile([[bag(0, 'left'), 'Not detected']]))
    const before = digest(at.desk.file)
    const good = file('good.csv', plainFile([[bag(0, 'right'), 'Detected']]))
    expect(answer(await duskline('check-results', good, at.desk.file, '--json'))).toMatchObject({
      ok: true,
      value: { rows: 1, good: { detected: 1 }, doubts: [] },
    })
    const bad = file('bad.csv', plainFile([['Total: 7', '']]))
    const refused = await duskline('check-results', bad, at.desk.file)
    expect(refused).toMatchObject({ code: 1 })
    expect(refused.out).toContain('line 2: Not a sample number (Total: 7)')
    expect(digest(at.desk.file)).toBe(before)
  })

  test('overdue bags are listed, or written to a new file', async () => {
    const told = answer(await duskline('overdue', at.desk.file, '--json'))
    expect(told).toMatchObject({ ok: true, value: { all: 3, days: 60 } })
    const out = join(scratch, 'overdue.csv')
    expect((await duskline('overdue', at.desk.file, '--out', out)).code).toBe(0)
    expect(readFileSync(out, 'utf8').trim().split('\n')).toHaveLength(4)
    expect((await duskline('overdue', at.desk.file, '--out', out)).code).toBe(1)
  })

  test('invented results are made for a practice log and for no other', async () => {
    const none = join(scratch, 'none.csv')
    const refused = await duskline('practice-results', at.desk.file, '--out', none)
    expect(refused).toMatchObject({ code: 1 })
    expect(refused.err).toContain('This is a real log')
    const day = join(scratch, 'day')
    const played = await duskline(
      'practice',
      '--animals',
      '16',
      '--seed',
      '3',
      '--out',
      day,
      '--json',
    )
    const { value } = answer(played) as { value: { desks: { log: string }[] } }
    const log = value.desks[0]?.log ?? ''
    const out = join(scratch, 'practice.csv')
    const made = await duskline('practice-results', log, '--seed', '4', '--out', out)
    expect(made.code).toBe(0)
    expect(made.out).toMatch(/14 rows of them are bad:\nline \d+: /)
    expect(readFileSync(out, 'utf8')).toContain('Sample ID;Result;Method')
  }, 120_000)
})
