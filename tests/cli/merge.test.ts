import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { disputedLogs } from '../merge/disputed.ts'
import { duskline } from './run.ts'

const folder = mkdtempSync(join(tmpdir(), 'duskline-cli-merge-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const out = join(folder, 'weekend.merged')
let files: string[] = []

beforeAll(() => {
  files = disputedLogs(folder)
})

test('merge makes one log of many, names what became of each, and leaves the files as they were', async () => {
  const before = files.map((file) => readFileSync(file))
  const {
    code,
    out: said,
    err,
  } = await duskline('merge', '--out', out, ...files, join(folder, 'notes.stationlog'))
  expect({ code, err }).toEqual({ code: 0, err: '' })
  expect(said).toContain('notes.stationlog: not merged.')
  expect(said).toContain('The file is damaged')
  expect(said).toContain('Entry 4 of desk 26PQRE was altered after it was written: set aside.')
  expect(said).toContain('1 x one bag number twice')
  expect(files.map((file) => readFileSync(file))).toEqual(before)
})

test('merging again brings nothing new, and says so to a machine too', async () => {
  const merged = readFileSync(out)
  const { code, out: json } = await duskline('merge', '--json', '--out', out, ...files)
  expect(code).toBe(0)
  expect(JSON.parse(json)).toMatchObject({ ok: true, value: { added: 0 } })
  expect(readFileSync(out)).toEqual(merged)
})

test('a merged log is exported and rebuilt like any other', async () => {
  const rebuilt = await duskline('rebuild', out)
  expect(rebuilt.code).toBe(0)
  const animals = await duskline(
    'export',
    out,
    '--what',
    'animals',
    '--format',
    'json',
    '--hunters',
  )
  const tags = (JSON.parse(animals.out) as { tag: string }[]).map(({ tag }) => tag)
  expect(tags.filter((tag) => tag === 'T100').length).toBe(2)
})

test('other logs are not merged into the log of a station, nor is anything made of nothing', async () => {
  const [station = '', other = ''] = files
  const into = await duskline('merge', '--out', station, other)
  expect(into.code).toBe(1)
  expect(into.err).toContain('is the log of a station desk')
  const itself = await duskline('merge', '--out', out, out)
  expect(itself.code).toBe(1)
  writeFileSync(join(folder, 'empty'), '')
  const nothing = await duskline('merge', '--out', join(folder, 'new'), join(folder, 'empty'))
  expect(nothing.code).toBe(1)
  expect(nothing.err).toContain('None of these files can be merged.')
  expect(existsSync(join(folder, 'new'))).toBe(false)
})

test('publish without a server that answers is refused, and the file stays what it was', async () => {
  const refused = await duskline('publish', out, '--to', 'postgres://office@127.0.0.1:1/x')
  expect(refused.code).toBe(1)
  expect(refused.err).toContain('The server does not answer.')
})
