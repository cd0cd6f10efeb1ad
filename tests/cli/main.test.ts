import {
  copyFileSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, extname, join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest'
import { Manifest } from '../../shared-types/manifest.ts'
import { drawnPages, pageTexts, sightings } from '../print/read-pdf.ts'
import { answer, digest, duskline, root, run } from './run.ts'

// Each run is a process of its own, and a busy computer may take seconds to start one.
vi.setConfig({ testTimeout: 120_000 })
const folder = mkdtempSync(join(tmpdir(), 'duskline-cli-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const day = join(folder, 'day')
let log = ''
let left: string[] = []

beforeAll(async () => {
  const played = await duskline('practice', '--animals', '24', '--seed', '7', '--out', day)
  expect(played).toMatchObject({ code: 0, err: '' })
  left = readdirSync(day)
  log = join(day, left.find((name) => name.endsWith('.stationlog')) ?? '')
}, 120_000)

const made = (name: string) => join(folder, name)
const lists = ['animals', 'samples', 'kits', 'coolers', 'entries']

const asked = new Map<string, Promise<string>>()

/** A list of the log; asked once, since reading changes nothing. */
function exported(what: string, ...more: string[]): Promise<string> {
  const call = [what, ...more].join(' ')
  const list =
    asked.get(call) ?? duskline('export', log, '--what', what, ...more).then(({ out }) => out)
  asked.set(call, list)
  return list
}

/** A copy of the log with something done to its bytes. */
function spoilt(name: string, spoil: (bytes: Buffer) => Buffer): string {
  const path = made(name)
  writeFileSync(path, spoil(readFileSync(log)))
  return path
}

describe('practice', () => {
  test('leaves a log and its key to contacts, labels, a close sheet and a manifest in three forms', () => {
    const kinds = left.map((name) => name.replace(/-?26QFT\w+/, '').replace(/-2026-11-14/, ''))
    expect(new Set(kinds)).toEqual(
      new Set([
        'close.pdf',
        'contact-keys.json',
        'labels-on-record.pdf',
        'manifest.csv',
        'manifest.json',
        'manifest.pdf',
        'practice-quernfield-turnout.stationlog',
        'practice-units.csv',
        'practice-units.geojson',
      ]),
    )
    expect(kinds.length).toBe(9)
  })

  test('tells a machine what it made, and makes the same again from the same seed', async () => {
    const out = made('again')
    const again = ['practice', '--animals', '24', '--seed', '7', '--out', out, '--json']
    const played = await duskline(...again)
    expect(played).toMatchObject({ code: 0, err: '' })
    expect(answer(played)).toMatchObject({
      ok: true,
      value: { seed: 7, desks: [{ desk: '26QFTA', animals: 24, log: join(out, basename(log)) }] },
    })
    const copy = await duskline('export', join(out, basename(log)), '--what', 'entries')
    expect(copy.out).toBe(await exported('entries'))
    for (const name of left.filter((each) => /manifest.*(json|csv)$/.test(each)))
      expect(readFileSync(join(out, name))).toEqual(readFileSync(join(day, name)))
  })

  test('does not play into a folder that holds something', async () => {
    const refused = await duskline('practice', '--animals', '1', '--out', day)
    expect(refused).toMatchObject({ code: 1, out: '' })
    expect(refused.err).toContain('Name an empty folder')
    expect(readdirSync(day)).toEqual(left)
  })
})

describe('verify', () => {
  test('says that a practice day is whole', async () => {
    const verified = await duskline('verify', log)
    expect(verified).toMatchObject({ code: 0, err: '' })
    expect(verified.out).toMatch(/is whole: \d+ entries of 26QFTA/)
    expect(answer(await duskline('verify', log, '--json'))).toMatchObject({
      ok: true,
      value: { whole: true, readTables: 'equal', findings: [] },
    })
  })

  test('refuses a log in which a word was altered, and names the entry', async () => {
    const altered = spoilt('altered.stationlog', (bytes) =>
      Buffer.from(bytes.toString('latin1').replaceAll('Upper Vannet', 'Upper Vennat'), 'latin1'),
    )
    const verified = await duskline('verify', altered)
    expect(verified.code).toBe(1)
    expect(verified.out).toContain('Entry 1 of desk 26QFTA')
    expect(verified.err).toContain('is not whole')
    const told = answer(await duskline('verify', altered, '--json'))
    expect(told).toMatchObject({ ok: false, refusal: { code: 'not-whole' } })
    expect(told).toMatchObject({ value: { whole: false, readTables: 'not-compared' } })
  })
})

test('rebuild makes the same tables again', async () => {
  const copy = made('rebuilt.stationlog')
  copyFileSync(log, copy)
  expect(await duskline('rebuild', copy)).toMatchObject({ code: 0, err: '' })
  expect((await duskline('verify', copy)).code).toBe(0)
})

describe('export', () => {
  test.each(lists)('lists the %s, as many in CSV as in JSON', async (what) => {
    const [json, csv] = await Promise.all([exported(what, '--format', 'json'), exported(what)])
    const rows: Record<string, unknown>[] = JSON.parse(json)
    expect(rows.length).toBeGreaterThan(1)
    expect(csv.split('\n', 1)[0]).toBe(Object.keys(rows[0] ?? {}).join(','))
    expect(csv.trimEnd().split('\n').length).toBe(rows.length + 1)
  })

  test('never lets out how to reach a hunter, though the log keeps it', async () => {
    const texts = await Promise.all(lists.map((what) => exported(what)))
    expect(texts.join('')).toMatch(/"contact"":""[0-9a-f]{64}/)
    for (const text of [...texts, readFileSync(log, 'latin1')])
      expect(text).not.toMatch(/@example\.org|555-01\d\d/)
  })

  test('writes a new file, and none over one that is there', async () => {
    const out = made('animals.csv')
    await exported('animals', '--out', out)
    expect(readFileSync(out, 'utf8')).toBe(await exported('animals'))
    const again = await duskline('export', log, '--what', 'kits', '--out', out)
    expect(again).toMatchObject({ code: 1, out: '' })
    expect(again.err).toContain('Give another name')
    expect(readFileSync(out, 'utf8')).toContain('animal,')
  })

  test.skipIf(process.platform === 'win32')(
    'does not mind a reader who has seen enough',
    async () => {
      const main = join(root, 'electron/cli/main.ts')
      const piped = `"${process.execPath}" "${main}" export "${log}" --what entries | head -n 1`
      expect(await run('sh', ['-c', piped])).toEqual({
        code: 0,
        out: 'desk,seq,ms,n,wall,by,kind,v,body,prev,hash\n',
        err: '',
      })
    },
  )
})

describe('documents', () => {
  test('labels are those on record, marked so, and a decoder reads their numbers', async () => {
    const out = made('labels.pdf')
    expect(await duskline('labels', log, '--out', out)).toMatchObject({ code: 0, err: '' })
    const pdf = new Uint8Array(readFileSync(out))
    const [page] = await pageTexts(pdf)
    expect(page).toContain('RECORD ONLY')
    expect(page).toContain('PRACTICE')
    const read = await sightings((await drawnPages(pdf, 300)).slice(0, 1))
    const samples = await exported('samples')
    const bags = read.map(({ text }) => text).filter((text) => /[LR].$/.test(text))
    expect(bags.length).toBeGreaterThan(1)
    for (const bag of bags) expect(samples).toContain(bag)
  })

  test('the close sheet is that of the last day, or of the day asked for', async () => {
    const close = (out: string, ...more: string[]) =>
      duskline('close', log, '--out', made(out), ...more)
    expect((await close('close.pdf')).code).toBe(0)
    const [page] = await pageTexts(new Uint8Array(readFileSync(made('close.pdf'))))
    expect(page).toContain('2026-11-14')
    expect((await close('same.pdf', '--date', '2026-11-14')).code).toBe(0)
    const other = await close('other.pdf', '--date', '2026-11-15')
    expect(other.code).toBe(1)
    expect(other.err).toContain('not closed')
  })

  test('the manifest is the one that was signed, digest and all', async () => {
    const out = made('manifests')
    expect((await duskline('manifest', log, '--out', out)).code).toBe(0)
    const names = readdirSync(out)
    expect(new Set(names.map((name) => extname(name)))).toEqual(new Set(['.csv', '.json', '.pdf']))
    const json = names.find((name) => name.endsWith('.json')) ?? ''
    const { manifest } = JSON.parse(readFileSync(join(out, json), 'utf8'))
    expect(Manifest.parse(manifest)).toMatchObject({ desk: '26QFTA', practice: true })
    expect(readFileSync(join(out, json))).toEqual(readFileSync(join(day, json)))
  })
})

test('reading leaves the log and its folder as they were', async () => {
  const before = digest(log)
  await Promise.all([
    duskline('verify', log),
    duskline('export', log, '--what', 'animals'),
    duskline('labels', log, '--out', made('untouched.pdf')),
    duskline('close', log, '--out', made('untouched-close.pdf')),
    duskline('manifest', log, '--out', made('untouched')),
  ])
  expect(readdirSync(made('untouched')).length).toBe(3)
  expect(digest(log)).toBe(before)
  expect(readdirSync(day)).toEqual(left)
})

test('no verb writes over the log that it reads', async () => {
  const before = digest(log)
  expect((await duskline('labels', log, '--out', log)).code).toBe(1)
  expect((await duskline('export', log, '--what', 'kits', '--out', log)).code).toBe(1)
  expect(digest(log)).toBe(before)
})

describe('what is not a log', () => {
  const spoilings: readonly [string, string, (bytes: Buffer) => Buffer][] = [
    ['foreign', 'not-a-station-log', () => Buffer.from('not a log\n'.repeat(50))],
    ['torn in its middle', 'torn', (bytes) => bytes.subarray(0, 100_000)],
    ['torn in its first line', 'torn', (bytes) => bytes.subarray(0, 50)],
  ]

  test.each(spoilings)('a %s file is refused as %s', async (name, code, spoil) => {
    const refused = await duskline('verify', spoilt(`${name}.stationlog`, spoil), '--json')
    expect(refused.code).toBe(1)
    const { refusal } = answer(refused)
    expect(refusal?.code).toBe(code)
    expect(refused.err).toBe(`${refusal?.say}\n${refusal?.next}\n`)
  })

  test.each([
    ['verify'],
    ['rebuild'],
    ['export', '--what', 'animals'],
    ['labels', '--out', made('never.pdf')],
    ['close', '--out', made('never.pdf')],
    ['manifest', '--out', made('never')],
  ])('%s refuses a file that is not there, and makes nothing', async (verb, ...rest) => {
    const refused = await duskline(verb, made('nowhere.stationlog'), ...rest, '--json')
    expect(refused.code).toBe(1)
    expect(answer(refused).refusal?.code).toBe('not-found')
    expect(readdirSync(folder).filter((name) => /^never|nowhere/.test(name))).toEqual([])
  })
})

describe('a wrong call', () => {
  test.each([
    ['no verb', []],
    ['an unknown verb', ['frobnicate']],
    ['no file', ['verify']],
    ['a file too many', ['verify', 'one', 'two']],
    ['an unknown option', ['verify', 'one', '--loudly']],
    ['no list', ['export', 'one']],
    ['an unknown list', ['export', 'one', '--what', 'hunters']],
    ['an unknown format', ['export', 'one', '--what', 'kits', '--format', 'xml']],
    ['no folder to play in', ['practice']],
    ['no animals', ['practice', '--animals', '0', '--out', 'one']],
    ['half an animal', ['practice', '--animals', '1.5', '--out', 'one']],
    ['more desks than letters', ['practice', '--desks', '19', '--out', 'one']],
    ['a day that is not', ['close', 'one', '--date', '2026-11-31', '--out', 'two']],
  ])('%s: exit 2, what is wanted on stderr, nothing on stdout', async (_, args) => {
    const wrong = await duskline(...args)
    expect(wrong).toMatchObject({ code: 2, out: '' })
    expect(wrong.err).toMatch(/--help/)
  })

  test('asking for help is not one', async () => {
    for (const args of [['--help'], ['help', 'export'], ['practice', '--help']]) {
      const helped = await duskline(...args)
      expect(helped).toMatchObject({ code: 0, err: '' })
      expect(helped.out).toContain('Usage: duskline')
    }
  })
})

test('under npm a path is meant from where the person stands, and the exit code comes through', async () => {
  const npm = (...args: string[]) =>
    run('npm', ['run', '--silent', '--prefix', root, 'duskline', '--', ...args], day)
  expect(await npm('verify', basename(log))).toMatchObject({ code: 0, err: '' })
  expect((await npm('verify', 'nowhere')).code).toBe(1)
  expect((await npm('frobnicate')).code).toBe(2)
})
