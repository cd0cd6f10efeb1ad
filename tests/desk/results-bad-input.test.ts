import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { ResultReading, RowDoubt } from '../../shared-types/laboratory-result.ts'
import { bagNumber, DeskId, grouped, numberParts } from '../../shared-types/sample-number.ts'
import {
  bring,
  type Delivered,
  delivered,
  laboratory,
  plainFile,
  plainReading,
  readIn,
} from '../support/delivered.ts'
import { checkIn, sampleBoth } from '../support/desk.ts'
import { workbook } from '../support/workbook.ts'

let at: Delivered
beforeAll(async () => {
  at = await delivered(8)
}, 60_000)
afterAll(() => at.desk.end())

const animal = (place: number) => {
  const found = at.animals[place]
  if (!found) throw new Error('no such animal')
  return found
}

const look = async (bytes: string | Uint8Array, table: ResultReading['table'] | null = null) =>
  at.desk.ask('results.look', {
    brought: await bring(at.desk, bytes),
    laboratory: '',
    table,
    linesAbove: null,
    wordColumn: null,
    dateColumn: null,
  })

const preview = async (bytes: string | Uint8Array, reading: ResultReading = plainReading()) =>
  at.desk.ask('results.preview', { brought: await bring(at.desk, bytes), laboratory, reading })

const doubtsOf = async (file: string, reading?: ResultReading) =>
  (await preview(file, reading)).doubts.map(({ doubt, rows }) => [doubt, rows])

describe('letters of another encoding', () => {
  const words = [{ said: 'Nicht nachgewiesen – geprüft', means: 'not-detected' as const }]
  const file = () =>
    `Sample,Result,Method,Tested\n${animal(0).left},Nicht nachgewiesen – geprüft,ELISA,2026-11-24\n`

  test.each([
    // Byte order marks: The Unicode Standard 15.0, section 23.8.
    [
      'UTF-16, low byte first, with a mark',
      'utf-16le',
      true,
      (text: string) => Buffer.from(`\uFEFF${text}`, 'utf16le'),
    ],
    [
      'UTF-16, high byte first, with a mark',
      'utf-16be',
      true,
      (text: string) => Buffer.from(`\uFEFF${text}`, 'utf16le').swap16(),
    ],
    ['UTF-16 without a mark', 'utf-16le', false, (text: string) => Buffer.from(text, 'utf16le')],
    ['UTF-8 with a mark', 'utf-8', true, (text: string) => Buffer.from(`\uFEFF${text}`)],
    ['UTF-8 without a mark', 'utf-8', true, (text: string) => Buffer.from(text)],
    // unicode.org/Public/MAPPINGS/VENDORS/MICSFT/WINDOWS/CP1252.TXT: 0x96 is U+2013, 0xFC is U+00FC.
    [
      'Windows Western',
      'windows-1252',
      false,
      (text: string) => Buffer.from(text.replace('–', '\x96'), 'latin1'),
    ],
  ] as const)(
    '%s is found out, and asked where it cannot be known',
    async (_, encoding, sure, coded) => {
      const seen = await look(coded(file()))
      expect(seen).toMatchObject({
        table: { is: 'text', encoding, delimiter: ',' },
        encodingSure: sure,
      })
      expect(seen.headings).toEqual(['Sample', 'Result', 'Method', 'Tested'])
      expect(seen.rows[1]?.[1]).toBe('Nicht nachgewiesen – geprüft')
      const table = { is: 'text', encoding, delimiter: ',' } as const
      const read = await preview(coded(file()), plainReading({ table, words }))
      expect(read.good).toEqual([{ word: 'not-detected', rows: 1 }])
    },
  )

  test('read by the wrong one, the damage is there to be seen before anything is read in', async () => {
    const bytes = Buffer.from(file(), 'latin1')
    const seen = await look(bytes, { is: 'text', encoding: 'utf-8', delimiter: ',' })
    expect(seen.rows[1]?.[1]).toContain('\uFFFD')
  })
})

describe('tables of another cut', () => {
  test('semicolons with decimal commas are told from commas', async () => {
    const file = `Sample;OD;Result\n${animal(0).left};0,113;Not detected\n${animal(0).right};1,2;Not detected\n`
    const seen = await look(file)
    expect(seen).toMatchObject({ table: { delimiter: ';' }, delimiterSure: true })
    const table = { is: 'text', encoding: 'utf-8', delimiter: ';' } as const
    const columns = {
      word: { at: 2, heading: 'Result' },
      method: null,
      tested: null,
      methodSaid: 'ELISA',
    }
    const read = await preview(file, plainReading({ table, ...columns }))
    expect(read.good).toEqual([{ word: 'not-detected', rows: 2 }])
  })

  test.each([
    ['tabs', '\t'],
    ['upright bars', '|'],
  ] as const)('%s too', async (_, delimiter) => {
    const seen = await look(
      plainFile([[animal(0).left, 'Not detected']]).replaceAll(',', delimiter),
    )
    expect(seen).toMatchObject({ table: { delimiter }, delimiterSure: true })
  })

  test('a decimal comma within commas moves the cells of its row, which is seen', async () => {
    const file = `Sample,OD,Result,Tested\n${animal(0).left},0,113,Not detected,2026-11-24\n`
    const columns = { word: { at: 2, heading: 'Result' }, method: null, methodSaid: '' }
    expect(await doubtsOf(file, plainReading(columns))).toEqual([['row-torn', 1]])
  })

  test('a quoted cell may hold the separator, quotes and a line end (RFC 4180, section 2)', async () => {
    const file = `Sample,Result,Method,Tested\r\n${animal(0).left},"Not detected, ""clear""\r\nsee note","ELISA",2026-11-24\r\n`
    const words = [{ said: 'Not detected, "clear" see note', means: 'not-detected' as const }]
    expect((await preview(file, plainReading({ words }))).good).toHaveLength(1)
  })

  test('titles and merged cells above the heading are passed over; the person may say otherwise', async () => {
    const title = `${laboratory},,,\nWildlife report,,,\n,,,\n`
    const file = title + plainFile([[animal(0).left, 'Not detected']])
    const seen = await look(file)
    expect(seen.linesAbove).toBe(3)
    expect(seen.headings).toEqual(['Sample', 'Result', 'Method', 'Tested'])
    expect((await preview(file, plainReading({ linesAbove: 3 }))).good).toHaveLength(1)
    const brought = await bring(at.desk, file)
    const reading = plainReading({ linesAbove: 0 })
    expect(await at.desk.code('results.preview', { brought, laboratory, reading })).toBe(
      'heading-differs',
    )
  })

  test('empty lines, a sep= line and spaces around cells do no harm', async () => {
    const file = `sep=,\n${plainFile([[` ${animal(0).left} `, ' not  DETECTED ']])}\n\n,,,\n`
    const read = await preview(file, plainReading({ linesAbove: 1 }))
    expect(read).toMatchObject({ rows: 1, good: [{ word: 'not-detected', rows: 1 }] })
  })

  test('what is no table is refused in words', async () => {
    const brought = await bring(at.desk, Buffer.from('PK\x03\x04 no workbook', 'latin1'), 'x.xlsx')
    const reading = plainReading({ table: { is: 'workbook', sheet: 'Results' } })
    expect(await at.desk.code('results.preview', { brought, laboratory, reading })).toBe(
      'not-a-table',
    )
    const old = await bring(at.desk, Buffer.from('d0cf11e0a1b11ae1', 'hex'), 'old.xls')
    const asText = { brought: old, laboratory, reading: plainReading() }
    expect(await at.desk.code('results.preview', asText)).toBe('old-workbook')
    const gone = { brought: '0'.repeat(16), laboratory, reading: plainReading() }
    expect(await at.desk.code('results.preview', gone)).toBe('file-not-here')
  })
})

describe('a workbook', () => {
  const file = () =>
    workbook({
      Summary: [['Nothing here']],
      Results: [
        [laboratory, null, null, null],
        ['Sample', 'Result', 'Method', 'Tested'],
        [animal(0).left, 'Not detected', 'ELISA', { day: '2026-11-24' }],
        [animal(0).right, 'Not detected', 'ELISA', { day: '2026-11-24' }],
        [26e10, 'Detected', 'ELISA', { day: '2026-11-24' }],
      ],
    })

  test('is read sheet by sheet; its days need no order, and a number is seen as damaged', async () => {
    const first = await look(file())
    expect(first).toMatchObject({ is: 'workbook', sheets: ['Summary', 'Results'] })
    const seen = await look(file(), { is: 'workbook', sheet: 'Results' })
    expect(seen).toMatchObject({
      linesAbove: 1,
      headings: ['Sample', 'Result', 'Method', 'Tested'],
    })
    const reading = plainReading({ table: { is: 'workbook', sheet: 'Results' }, linesAbove: 1 })
    const read = await preview(file(), reading)
    expect(read.good).toEqual([{ word: 'not-detected', rows: 2 }])
    expect(read.doubts).toMatchObject([{ doubt: 'number-not-read', rows: 1 }])
    expect(seen.rows[2]?.[3]).toBe('2026-11-24')
  })
})

describe('rows that a person must settle', () => {
  const other = () => numberParts(animal(0).left).desk
  const cases: [RowDoubt, () => [string, string, string?][]][] = [
    ['number-not-read', () => [['Total: 7', '']]],
    [
      'check-character-wrong',
      () => [
        [
          `${animal(0).left.slice(0, -1)}?`.replace('?', animal(0).left.endsWith('A') ? 'B' : 'A'),
          'Not detected',
        ],
      ],
    ],
    ['number-damaged', () => [['2.60E+11', 'Not detected']]],
    [
      'number-damaged',
      () => [[grouped(animal(0).left).replace(/([A-Z])0+(\d)/, '$1$2'), 'Not detected']],
    ],
    ['not-a-bag', () => [[animal(0).animal, 'Not detected']]],
    [
      'wrong-season',
      () => [[bagNumber(DeskId.parse(`25${other().slice(2)}`), 7, 'L'), 'Detected']],
    ],
    ['not-found', () => [[bagNumber(other(), 9000, 'L'), 'Not detected']]],
    ['word-not-known', () => [[animal(0).left, 'see note']]],
    ['word-not-known', () => [[animal(0).left, '']]],
    ['date-not-read', () => [[animal(0).left, 'Not detected', '46339']]],
    ['date-impossible', () => [[animal(0).left, 'Not detected', '2026-11-01']]],
    ['date-impossible', () => [[animal(0).left, 'Not detected', '2027-11-01']]],
    ['unsuitable', () => [[animal(0).left, 'Unsuitable']]],
    [
      'twice',
      () => [
        [animal(0).left, 'Not detected'],
        [animal(0).left, 'not detected'],
      ],
    ],
  ]
  test.each(cases)('%s', async (doubt, rows) => {
    expect(await doubtsOf(plainFile(rows()))).toEqual([[doubt, 1]])
  })

  test('contradictory rows are both held back', async () => {
    const file = plainFile([
      [animal(0).left, 'Not detected'],
      [animal(0).left, 'Detected'],
    ])
    expect(await preview(file)).toMatchObject({
      good: [],
      doubts: [{ doubt: 'contradictory', rows: 2 }],
    })
  })

  test('a bag that was never given to a courier', async () => {
    const { bags } = await sampleBoth(at.desk, await checkIn(at.desk), at.crew.sampler)
    expect(await doubtsOf(plainFile([[bags[0] ?? '', 'Not detected', '2026-12-04']]))).toEqual([
      ['never-sent', 1],
    ])
  })

  test('each is shown with what to do, detections first, and taken or left out by a person', async () => {
    const rows = [
      ['Total: 7', ''],
      [animal(1).left, 'see note'],
      [animal(2).left, 'Detected', '46339'],
      [grouped(animal(3).left).replace(/([A-Z])0+(\d)/, '$1$2'), 'Not detected'],
    ] as const
    await readIn(at.desk, plainFile(rows))
    const { doubts } = await at.desk.ask('results.doubts', {})
    expect(doubts.map(({ doubt }) => doubt)).toEqual([
      'date-not-read',
      'number-not-read',
      'word-not-known',
      'number-damaged',
    ])
    for (const { say, next } of doubts) expect(`${say} ${next}`).toMatch(/^[“A-Z].*\..+\.$/s)
    const settle = async (line: number, given: object) => {
      const file = doubts[0]?.file ?? ''
      const settling = { file, line, settlement: 'taken', words: 'asked', ...given } as const
      const result = await at.desk.desk.call(at.desk.session, 'results.settle', settling)
      return result.ok ? 'done' : result.refusal.code
    }
    expect(await settle(2, { word: 'detected' })).toBe('bag-needed')
    expect(await settle(2, { settlement: 'left' })).toBe('done')
    expect(await settle(3, {})).toBe('word-needed')
    expect(await settle(3, { word: 'not-detected' })).toBe('done')
    expect(await settle(4, {})).toBe('tested-needed')
    expect(await settle(4, { tested: '2026-11-01' })).toBe('date-impossible')
    expect(await settle(4, { tested: '2026-11-20' })).toBe('done')
    expect(await settle(5, {})).toBe('bag-needed')
    expect(await settle(5, { bag: bagNumber(DeskId.parse('26KRVA'), 9001, 'L') })).toBe(
      'bag-not-found',
    )
    expect(await settle(5, { bag: animal(3).left })).toBe('done')
    expect((await at.desk.ask('results.doubts', {})).open).toBe(0)
    const { words } = await at.desk.ask('results', {})
    expect(words.find(({ word }) => word === 'detected')).toMatchObject({ animals: 1 })
  })

  test('many are settled together, but never a detection among them', async () => {
    const of = (said: string, rows: number) =>
      Array.from({ length: rows }, (_, row) => {
        return [bagNumber(DeskId.parse('26KRVA'), 8000 + row, 'R'), said] as const
      })
    await readIn(at.desk, plainFile([...of('Detected', 1), ...of('Not detected', 3).slice(1)]))
    const { doubts } = await at.desk.ask('results.doubts', {})
    const file = doubts[0]?.file ?? ''
    const all = { file, doubt: 'not-found', settlement: 'left', words: 'another station' } as const
    expect(await at.desk.code('results.settleAll', all)).toBe('detections-one-by-one')
    const one = { file, line: 2, settlement: 'left', words: 'asked by phone' } as const
    await at.desk.ask('results.settle', one)
    expect(await at.desk.ask('results.settleAll', all)).toEqual({ settled: 2 })
  })

  test('read once more, the rows that a person settled stay as settled', async () => {
    const rows = [
      ['Total: 7', ''],
      [animal(4).left, 'Not detected'],
    ] as const
    await readIn(at.desk, plainFile(rows))
    const [total] = (await at.desk.ask('results.doubts', {})).doubts
    if (!total) throw new Error('nothing in doubt')
    const { file, line } = total
    await at.desk.ask('results.settle', { file, line, settlement: 'left', words: 'a total' })
    const brought = await bring(at.desk, plainFile(rows))
    const again = { brought, laboratory, reading: plainReading() }
    expect(await at.desk.code('results.import', again)).toBe('file-read-before')
  })

  test('a file that is misread as a whole is refused before thousands of rows are in doubt', async () => {
    const rows = Array.from({ length: 2100 }, (_, row) => [`x${row}`, 'Not detected'] as const)
    const brought = await bring(at.desk, plainFile(rows))
    const misread = { brought, laboratory, reading: plainReading() }
    expect(await at.desk.code('results.import', misread)).toBe('misread')
  })
})

describe('what goes out', () => {
  // OWASP, "CSV Injection" (owasp.org/www-community/attacks/CSV_Injection): = + - @, tab and return.
  test.each(['=1+1', '+1', '-1+1', '@SUM(1)', '\t=1', '\r=1'])(
    'a name that begins like the formula %j is text to a spreadsheet',
    async (name) => {
      const { text } = await mergeOf(name)
      const cell = text.split('\n').find((line) => line.includes('phone-is-here')) ?? ''
      expect(cell).not.toMatch(/(^|,)"?[=+\-@\t\r]/)
    },
  )

  async function mergeOf(name: string) {
    const contact = { name, phone: 'phone-is-here', email: '' }
    const { desk, animals } = await delivered(1, contact)
    const [one] = animals
    await readIn(desk, plainFile([[one?.left ?? '', 'Detected']]))
    const merged = await desk.ask('results.mailMerge', { word: 'detected', untoldOnly: false })
    await desk.end()
    return merged
  }
})
