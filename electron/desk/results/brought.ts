/** Laboratory files brought to the desk: kept in memory until they were read in or the log is put away. */
import { createHash } from 'node:crypto'
import type { ReadableLog } from '../../../db/connection.ts'
import type { ResultReading } from '../../../shared-types/laboratory-result.ts'
import { granted, type Result, refused } from '../../../shared-types/result.ts'
import { isOldWorkbook, isWorkbook, type Sheets, sheetsOf } from './workbook.ts'
import { cutText, decoded } from './file-text.ts'

export type Table = ResultReading['table']

const mostBytes = 30 * 1024 * 1024
const mostFiles = 6

/** One file, with what was already made of it: a preview and the reading in need not cut it again. */
export class BroughtFile {
  readonly name: string
  #bytes = new Uint8Array(0)
  #sheets: Sheets | null = null
  readonly #tables = new Map<string, readonly (readonly string[])[]>()

  constructor(name: string) {
    this.name = name
  }

  add(piece: Uint8Array): void {
    this.#bytes = Buffer.concat([this.#bytes, piece])
    this.#sheets = null
    this.#tables.clear()
  }

  get bytes(): Uint8Array {
    return this.#bytes
  }

  get digest(): string {
    return createHash('sha256').update(this.#bytes).digest('hex')
  }

  get isWorkbook(): boolean {
    return isWorkbook(this.#bytes)
  }

  async sheets(): Promise<Sheets> {
    this.#sheets ??= await sheetsOf(this.#bytes)
    return this.#sheets
  }

  /** The file cut into cells. Refuses `not-a-table` and `old-workbook`. */
  async table(by: Table): Promise<Result<readonly (readonly string[])[]>> {
    if (isOldWorkbook(this.#bytes)) return oldWorkbook(this.name)
    const key = JSON.stringify(by)
    const known = this.#tables.get(key)
    if (known) return granted(known)
    try {
      const rows = await this.#cut(by)
      if (rows === undefined) return notATable(this.name)
      this.#tables.set(key, rows)
      return granted(rows)
    } catch {
      return notATable(this.name)
    }
  }

  async #cut(by: Table): Promise<readonly (readonly string[])[] | undefined> {
    if (by.is === 'workbook') return (await this.sheets()).get(by.sheet)
    return cutText(decoded(this.#bytes, by.encoding), by.delimiter)
  }
}

function notATable(name: string): Result<never> {
  return refused(
    'not-a-table',
    `${name} could not be cut into lines and columns.`,
    'Save it in the spreadsheet as .xlsx or as CSV, and choose that file.',
    'brought',
  )
}

function oldWorkbook(name: string): Result<never> {
  return refused(
    'old-workbook',
    `${name} is a workbook of the older kind (.xls).`,
    'Open it in the spreadsheet and save it as .xlsx, then choose that file.',
    'brought',
  )
}

const shelves = new WeakMap<ReadableLog, Map<string, BroughtFile>>()

function shelfOf(log: ReadableLog): Map<string, BroughtFile> {
  const shelf = shelves.get(log) ?? new Map<string, BroughtFile>()
  shelves.set(log, shelf)
  return shelf
}

/** Takes a piece of a file in; the first one opens it under a mark of its own. */
export function bring(
  log: ReadableLog,
  piece: { readonly brought: string | null; readonly name: string; readonly base64: string },
  newMark: () => string,
): Result<{ brought: string; bytes: number }> {
  const shelf = shelfOf(log)
  const mark = piece.brought ?? newMark()
  const file = piece.brought === null ? new BroughtFile(piece.name) : shelf.get(mark)
  if (!file) return gone()
  file.add(Buffer.from(piece.base64, 'base64'))
  if (file.bytes.length > mostBytes) {
    shelf.delete(mark)
    return refused(
      'file-too-large',
      `${piece.name} is larger than 30 megabytes.`,
      'Split it in the spreadsheet and read the parts one after the other.',
      'brought',
    )
  }
  shelf.set(mark, file)
  for (const oldest of [...shelf.keys()].slice(0, -mostFiles)) shelf.delete(oldest)
  return granted({ brought: mark, bytes: file.bytes.length })
}

export function broughtFile(log: ReadableLog, mark: string): Result<BroughtFile> {
  const file = shelfOf(log).get(mark)
  return file ? granted(file) : gone()
}

function gone(): Result<never> {
  return refused('file-not-here', 'The file is no longer at hand.', 'Choose it again.', 'brought')
}
