/** The rows of a laboratory's table, read by what a person said of it. */
import {
  type DoubtfulRow,
  mostResults,
  type PickedColumn,
  type ResultReading,
  type ResultWord,
  type RowDoubt,
  type WordMeans,
} from '../../../shared-types/laboratory-result.ts'
import type { LocalDate } from '../../../shared-types/local-date.ts'
import { granted, type Result, refused } from '../../../shared-types/result.ts'
import type { BagNumber } from '../../../shared-types/sample-number.ts'
import { readDay } from './result-date.ts'
import { readBag } from './result-number.ts'

export type Cells = readonly string[]

/** A row whose number, word and date could all be read. */
export interface ReadRow {
  readonly line: number
  readonly bag: BagNumber
  readonly word: ResultWord
  readonly method: string
  readonly tested: LocalDate | null
  readonly cells: WrittenCells
}

/** The picked cells of a row as written. */
export type WrittenCells = Pick<DoubtfulRow, 'line' | 'number' | 'said' | 'method' | 'date'>

export interface ReadRows {
  readonly rows: number
  readonly read: readonly ReadRow[]
  readonly skipped: number
  readonly doubts: readonly DoubtfulRow[]
}

/** How a word is compared: case and spaces make no difference. */
export function wordKey(said: string): string {
  return said.trim().replace(/\s+/g, ' ').toLowerCase()
}

/** Reads every row below the heading. Refuses a table whose heading is not the one that was picked. */
export function readRows(table: readonly Cells[], reading: ResultReading): Result<ReadRows> {
  const heading = table[reading.linesAbove]
  const other = headingDiffers(heading ?? [], reading)
  if (other) return other
  const below = table.slice(reading.linesAbove + 1)
  const means = new Map(reading.words.map(({ said, means: word }) => [wordKey(said), word]))
  const found = { rows: 0, read: [] as ReadRow[], skipped: 0, doubts: [] as DoubtfulRow[] }
  for (const [place, row] of below.entries()) {
    if (row.every((cell) => cell.trim() === '')) continue
    found.rows += 1
    const cells = writtenCells(row, reading, reading.linesAbove + 2 + place)
    const isTorn = row.slice(heading?.length).some((cell) => cell.trim() !== '')
    const read = isTorn ? inDoubt(cells, 'row-torn') : readRow(cells, reading, means)
    if (read === 'skip') found.skipped += 1
    else if ('doubt' in read) found.doubts.push(read)
    else found.read.push(read)
  }
  return found.rows > mostResults ? tooMany(found.rows) : granted(found)
}

function headingDiffers(heading: Cells, reading: ResultReading): Result<never> | null {
  const picked = [reading.number, reading.word, reading.method, reading.tested]
  const other = picked.find(
    (column) => column && (heading[column.at] ?? '').trim() !== column.heading,
  )
  if (!other) return null
  return refused(
    'heading-differs',
    `Column ${other.at + 1} of this file is headed “${(heading[other.at] ?? '').trim()}”, not “${other.heading}”.`,
    'The laboratory changed its table: pick the line of the headings and the columns again.',
    'reading',
  )
}

function tooMany(rows: number): Result<never> {
  return refused(
    'too-many-rows',
    `The file has ${rows} rows; ${mostResults} are read at once.`,
    'Split the file in the spreadsheet and read the parts one after the other.',
    'file',
  )
}

function writtenCells(row: Cells, reading: ResultReading, line: number): WrittenCells {
  const cell = (column: PickedColumn | null) => (column ? (row[column.at] ?? '').trim() : '')
  return {
    line,
    number: cell(reading.number).slice(0, 60),
    said: cell(reading.word).slice(0, 80),
    method: (reading.method ? cell(reading.method) : reading.methodSaid).slice(0, 60),
    date: cell(reading.tested).slice(0, 40),
  }
}

export function inDoubt(
  cells: WrittenCells,
  doubt: RowDoubt,
  bag: BagNumber | null = null,
): DoubtfulRow {
  return { ...cells, doubt, bag }
}

function readRow(
  cells: WrittenCells,
  reading: ResultReading,
  means: ReadonlyMap<string, WordMeans>,
): ReadRow | DoubtfulRow | 'skip' {
  const word = means.get(wordKey(cells.said))
  if (word === 'skip') return 'skip'
  const number = readBag(cells.number)
  if (!number.ok) return inDoubt(cells, number.doubt, number.meant)
  const { bag } = number
  if (word === undefined) return inDoubt(cells, 'word-not-known', bag)
  const tested = cells.date === '' ? reading.testedOn : readDay(cells.date, reading.dateOrder)
  if (cells.date !== '' && tested === null) return inDoubt(cells, 'date-not-read', bag)
  return { line: cells.line, bag, word, method: cells.method, tested, cells }
}
