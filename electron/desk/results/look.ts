/** The first look at a laboratory's file: what it seems to be, and what a person must say of it. */
import { isFileRead, readingOf } from '../../../db/read/results.ts'
import {
  FileDelimiter,
  FileEncoding,
  type PickedColumn,
  type ResultReading,
} from '../../../shared-types/laboratory-result.ts'
import { granted, type Result } from '../../../shared-types/result.ts'
import type { ResultLookView } from '../../../shared-types/views/results.ts'
import { isOrderInDoubt, ordersThatFit } from '../../station/results/result-date.ts'
import { wordKey } from '../../station/results/result-rows.ts'
import type { QueryHandlers } from '../call.ts'
import { type BroughtFile, broughtFile, type Table } from './brought.ts'
import { decoded, guessDelimiter, guessEncoding } from './file-text.ts'

const linesShown = 14
const mostWords = 60

interface Guessed {
  readonly table: Table
  readonly sheets: readonly string[]
  readonly encodingSure: boolean
  readonly delimiterSure: boolean
}

async function guessed(file: BroughtFile, given: Table | null): Promise<Guessed> {
  if (file.isWorkbook) {
    const sheets = [...(await sheetsOrNone(file)).keys()]
    const sheet = given?.is === 'workbook' ? given.sheet : (sheets[0] ?? '?')
    const table = { is: 'workbook', sheet } as const
    return { table, sheets, encodingSure: true, delimiterSure: true }
  }
  const encoding = guessEncoding(file.bytes)
  const chosen = given?.is === 'text' ? given.encoding : encoding.is
  const delimiter = guessDelimiter(decoded(file.bytes.subarray(0, 80_000), chosen))
  return {
    table: given?.is === 'text' ? given : { is: 'text', encoding: chosen, delimiter: delimiter.is },
    sheets: [],
    encodingSure: encoding.sure,
    delimiterSure: delimiter.sure,
  }
}

async function sheetsOrNone(file: BroughtFile) {
  try {
    return await file.sheets()
  } catch {
    return new Map<string, never>()
  }
}

/** The first line in which most columns of the table have a heading, with something below them. */
function headingAt(rows: readonly (readonly string[])[]): number {
  const start = rows.slice(0, 40)
  const filled = start.map((row) => row.filter((cell) => cell !== '').length)
  const widest = Math.max(2, ...filled)
  const at = filled.findIndex((count) => count >= Math.max(2, widest * 0.8))
  return Math.max(0, at)
}

/** A remembered reading whose columns are found again by their headings; null where one is missing. */
function foundAgain(
  reading: ResultReading | null,
  table: Table,
  linesAbove: number,
  headings: readonly string[],
): ResultReading | null {
  if (reading === null) return null
  const again = <C extends PickedColumn | null>(column: C): C | undefined => {
    if (column === null) return column
    if ((headings[column.at] ?? '') === column.heading) return column
    const at = headings.indexOf(column.heading)
    return at < 0 ? undefined : { ...column, at }
  }
  const [number, word] = [again(reading.number), again(reading.word)]
  const [method, tested] = [again(reading.method), again(reading.tested)]
  if (!number || !word || method === undefined || tested === undefined) return null
  // The day of the last file's tests is not this one's.
  return { ...reading, table, linesAbove, number, word, method, tested, testedOn: null }
}

interface Columns {
  readonly wordColumn: number | null
  readonly dateColumn: number | null
}

async function lookAt(
  file: BroughtFile,
  asked: Columns & { readonly table: Table | null; readonly linesAbove: number | null },
): Promise<Result<Omit<ResultLookView, 'remembered' | 'readBefore'>>> {
  const { table, sheets, encodingSure, delimiterSure } = await guessed(file, asked.table)
  const rows = await file.table(table)
  if (!rows.ok) return rows
  const linesAbove = asked.linesAbove ?? headingAt(rows.value)
  const below = rows.value.slice(linesAbove + 1).filter((row) => row.some((cell) => cell !== ''))
  const column = (at: number | null) => (at === null ? [] : below.map((row) => row[at] ?? ''))
  const dates = column(asked.dateColumn).filter((text) => text !== '')
  return granted({
    is: table.is,
    sheets: [...sheets],
    table,
    encodingSure,
    delimiterSure,
    encodings: FileEncoding.options,
    delimiters: FileDelimiter.options,
    rows: rows.value.slice(0, linesShown).map((row) => [...row]),
    lines: rows.value.length,
    linesAbove,
    headings: [...(rows.value[linesAbove] ?? [])],
    said: wordsIn(column(asked.wordColumn)),
    dateOrders: asked.dateColumn === null ? [] : ordersThatFit(readable(dates)),
    orderInDoubt: isOrderInDoubt(readable(dates)),
    datesSeen: [...new Set(dates)].slice(0, 5),
  })
}

/** A few cells that are no date at all must not hide the order of the others. */
function readable(dates: readonly string[]): string[] {
  return [...new Set(dates)].filter((text) => ordersThatFit([text]).length > 0)
}

function wordsIn(cells: readonly string[]): ResultLookView['said'] {
  const tally = new Map<string, { said: string; rows: number }>()
  for (const cell of cells) {
    const known = tally.get(wordKey(cell))
    if (known) known.rows += 1
    else tally.set(wordKey(cell), { said: cell.trim().slice(0, 80), rows: 1 })
  }
  return [...tally.values()].toSorted((a, b) => b.rows - a.rows).slice(0, mostWords)
}

export const lookQueries = {
  'results.look': async ({ log }, { brought, laboratory, ...asked }) => {
    const file = broughtFile(log, brought)
    if (!file.ok) return file
    const remembered = laboratory === '' ? null : readingOf(log, laboratory)
    const seen = await lookAt(file.value, asked)
    if (!seen.ok) return seen
    const { table, linesAbove, headings } = seen.value
    return granted({
      ...seen.value,
      remembered: foundAgain(remembered, table, linesAbove, headings),
      readBefore: isFileRead(log, file.value.digest),
    })
  },
} satisfies Partial<QueryHandlers>
