/** Reading a laboratory's file in: a look at it, what it would bring, and the reading itself. */
import { setImmediate as aMoment } from 'node:timers/promises'
import type { ReadableLog } from '../../../db/connection.ts'
import { isFileRead } from '../../../db/read/results.ts'
import { settledLines } from '../../../db/read/row-doubts.ts'
import { draft } from '../../../shared-types/entry.ts'
import type { ResultReading } from '../../../shared-types/laboratory-result.ts'
import { granted, type Result, refused } from '../../../shared-types/result.ts'
import type { ResultPreview } from '../../../shared-types/views/results.ts'
import { type CheckedRows, checkRows } from '../../station/results/result-check.ts'
import { resultDrafts } from '../../station/results/result-drafts.ts'
import { readRows } from '../../station/results/result-rows.ts'
import type { CommandCall, CommandHandlers, QueryCall, QueryHandlers } from '../call.ts'
import { noLogOpen } from '../refusals.ts'
import { type BroughtFile, bring, broughtFile } from './brought.ts'
import { recordSeen } from './record-seen.ts'

/** Results written in one transaction: between two of them every window is served. */
const perStep = 2500

interface Importing {
  done: number
  readonly total: number
}
const underWay = new WeakMap<ReadableLog, Importing>()

/** How far the file that is being read in is, or null. */
export function importingOf(log: ReadableLog): Importing | null {
  return underWay.get(log) ?? null
}

export function readingInNow(): Result<never> {
  return refused(
    'reading-in-now',
    'A laboratory file is being read in.',
    'Wait until it is done, then do this again.',
  )
}

type Asked = Pick<QueryCall, 'log' | 'station' | 'now'>

/** The file checked against the record; rows that were settled before stay settled. */
async function checked(
  { log, station, now }: Asked,
  file: BroughtFile,
  reading: ResultReading,
): Promise<Result<CheckedRows>> {
  const table = await file.table(reading.table)
  if (!table.ok) return table
  await aMoment()
  const read = readRows(table.value, reading)
  if (!read.ok) return read
  await aMoment()
  const whole = checkRows(read.value, recordSeen(log, station.zone, now))
  if (!whole.ok) return whole
  const settled = settledLines(log, file.digest)
  if (settled.size === 0) return whole
  const doubts = whole.value.doubts.filter(({ line }) => !settled.has(line))
  const known = whole.value.known + whole.value.doubts.length - doubts.length
  return granted({ ...whole.value, doubts, known })
}

const mostShown = 20

function previewOf({ rows, good, known, skipped, doubts }: CheckedRows): ResultPreview {
  return {
    rows,
    known,
    skipped,
    good: tally(good, ({ row }) => row.word).map(([word, all]) => ({ word, rows: all.length })),
    doubts: tally(doubts, ({ doubt }) => doubt).map(([doubt, all]) => ({
      doubt,
      rows: all.length,
      first: all.slice(0, mostShown),
    })),
  }
}

function tally<T, K>(all: readonly T[], keyOf: (each: T) => K): [K, T[]][] {
  return [...Map.groupBy(all, keyOf)].toSorted((a, b) => b[1].length - a[1].length)
}

export const importQueries = {
  'results.progress': ({ log }) => {
    const importing = importingOf(log)
    return granted({ importing: importing && { ...importing } })
  },
  'results.preview': async (call, { brought, reading }) => {
    const file = broughtFile(call.log, brought)
    if (!file.ok) return file
    const rows = await checked(call, file.value, reading)
    return rows.ok ? granted(previewOf(rows.value)) : rows
  },
} satisfies Partial<QueryHandlers>

export const importCommands = {
  'results.bring': ({ log, deps }, piece) =>
    bring(log, piece, () => Buffer.from(deps.randomBytes(8)).toString('hex')),
  'results.import': async (call, { brought, laboratory, reading }) => {
    if (importingOf(call.log)) return readingInNow()
    const file = broughtFile(call.log, brought)
    if (!file.ok) return file
    const rows = await checked(call, file.value, reading)
    if (!rows.ok) return rows
    if (isNothingNew(call.log, file.value.digest, rows.value)) return readBefore(file.value.name)
    const importing = { done: 0, total: rows.value.good.length }
    underWay.set(call.log, importing)
    try {
      return await readIn(call, { file: file.value, laboratory, reading }, rows.value, importing)
    } finally {
      underWay.delete(call.log)
      call.tell(['results'])
    }
  },
} satisfies Partial<CommandHandlers>

function isNothingNew(log: ReadableLog, digest: string, { good, doubts }: CheckedRows): boolean {
  return good.length === 0 && doubts.length === 0 && isFileRead(log, digest)
}

function readBefore(name: string): Result<never> {
  return refused(
    'file-read-before',
    `${name} was read in before, and every row of it is on record.`,
    'Nothing needs reading in. Choose another file.',
    'brought',
  )
}

interface FileToRead {
  readonly file: BroughtFile
  readonly laboratory: string
  readonly reading: ResultReading
}

/**
 * In steps, so that the windows stay alive. A desk that ends in between has part of the results and no
 * word of the file: read in again, what is there is known, and the rest follows.
 */
async function readIn(
  { act, tell, log, shelf }: CommandCall,
  { file, laboratory, reading }: FileToRead,
  { rows, good, known, skipped, doubts }: CheckedRows,
  importing: Importing,
) {
  const { digest } = file
  const drafts = resultDrafts(good, { laboratory, digest })
  for (; importing.done < drafts.length; tell(['results'])) {
    const step = drafts.slice(importing.done, importing.done + perStep)
    const written = act(() => granted({ drafts: step, value: null }))
    if (!written.ok) return written
    importing.done += step.length
    await aMoment()
    if (shelf.log !== log) return noLogOpen()
  }
  const taken = good.length
  const value = { taken, known, skipped, doubts: doubts.length }
  const body = { laboratory, file: file.name, digest, reading, rows, taken, known, skipped }
  return act(() =>
    granted({ drafts: [draft('results.read', { ...body, doubts: [...doubts] })], value }),
  )
}
