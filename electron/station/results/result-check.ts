/** Which rows of a laboratory's file become results, and which wait for a person. */
import {
  type DoubtfulRow,
  mostRowProblems,
  type ResultWord,
  type RowDoubt,
} from '../../../shared-types/laboratory-result.ts'
import type { LocalDate } from '../../../shared-types/local-date.ts'
import { granted, type Result, refused } from '../../../shared-types/result.ts'
import type { AnimalNumber, BagNumber } from '../../../shared-types/sample-number.ts'
import type { BagPlace, TissueCheck } from '../../../shared-types/tissue.ts'
import { inDoubt, type ReadRow, type ReadRows } from './result-rows.ts'

/** What the log knows of a bag that a laboratory names. */
export interface KnownBag {
  readonly animal: AnimalNumber
  readonly place: BagPlace
  /** What the sampler saw in it; null where nobody said. */
  readonly seen: TissueCheck | null
  /** The day it was sealed. */
  readonly sealed: LocalDate
  /** The latest result on record. */
  readonly latest: {
    readonly word: ResultWord
    readonly method: string
    readonly tested: LocalDate | null
  } | null
}

/** What the log holds, for checking a file against it. */
export interface RecordSeen {
  readonly bagOf: (bag: BagNumber) => KnownBag | null
  /** Seasons of the stations in the log, two digits each. */
  readonly seasons: ReadonlySet<string>
  readonly today: LocalDate
}

export interface GoodRow {
  readonly row: ReadRow
  readonly animal: AnimalNumber
}

export interface CheckedRows {
  readonly rows: number
  readonly good: readonly GoodRow[]
  /** Rows that say what is on record already. */
  readonly known: number
  readonly skipped: number
  readonly doubts: readonly DoubtfulRow[]
}

/** Checks read rows against the record. Refuses a file of which thousands of rows are in doubt. */
export function checkRows(table: ReadRows, record: RecordSeen): Result<CheckedRows> {
  const doubts = [...table.doubts]
  const good: GoodRow[] = []
  let known = 0
  const repeats = repeatsIn(table.read)
  for (const row of table.read) {
    const bag = record.bagOf(row.bag)
    const doubt = repeats.get(row) ?? doubtOf(row, bag, record)
    if (doubt !== null || bag === null)
      doubts.push(inDoubt(row.cells, doubt ?? 'not-found', row.bag))
    else if (isOnRecord(row, bag)) known += 1
    else good.push({ row, animal: bag.animal })
  }
  if (doubts.length > mostRowProblems) return misread(doubts)
  const { rows, skipped } = table
  return granted({ rows, good, known, skipped, doubts: doubts.toSorted((a, b) => a.line - b.line) })
}

function misread(doubts: readonly DoubtfulRow[]): Result<never> {
  return refused(
    'misread',
    `${doubts.length} rows are in doubt: the file is being misread, or it is of another place.`,
    'Look at the columns, the line of the headings and the meaning of the words again.',
    'reading',
  )
}

/** Rows of one bag: all in doubt if they differ; if they say the same, all but the first. */
function repeatsIn(rows: readonly ReadRow[]): Map<ReadRow, RowDoubt> {
  const byBag = new Map<BagNumber, ReadRow[]>()
  for (const row of rows) {
    const same = byBag.get(row.bag)
    if (same) same.push(row)
    else byBag.set(row.bag, [row])
  }
  const doubts = new Map<ReadRow, RowDoubt>()
  for (const same of byBag.values()) {
    if (same.length === 1) continue
    const agree = new Set(same.map(({ word }) => word)).size === 1
    for (const row of agree ? same.slice(1) : same)
      doubts.set(row, agree ? 'twice' : 'contradictory')
  }
  return doubts
}

/**
 * Why a row is not taken as it came; null if nothing speaks against it. Tissue noted as no lymph node is
 * a doubt about "not detected" only: a detection counts whatever it was found in.
 */
export function doubtOf(
  row: Pick<ReadRow, 'bag' | 'word' | 'method' | 'tested'>,
  bag: KnownBag | null,
  record: Pick<RecordSeen, 'seasons' | 'today'>,
): RowDoubt | null {
  if (bag === null) return record.seasons.has(row.bag.slice(0, 2)) ? 'not-found' : 'wrong-season'
  if (row.tested !== null && (row.tested < bag.sealed || row.tested > record.today))
    return 'date-impossible'
  if (bag.place !== 'handed-off') return 'never-sent'
  if (isOnRecord(row, bag)) return null
  if (bag.latest !== null && isChange(bag.latest.word, row.word)) return 'changed'
  if (row.word === 'unsuitable') return 'unsuitable'
  return row.word === 'not-detected' && !isTestable(bag.seen) ? 'wrong-tissue' : null
}

function isOnRecord(
  { word, method, tested }: Omit<ReadRow, 'line' | 'bag' | 'cells'>,
  { latest }: KnownBag,
) {
  return latest?.word === word && latest.method === method && latest.tested === tested
}

/** A pending test may end in anything. Any other change of a word is looked at by a person. */
function isChange(before: ResultWord, after: ResultWord): boolean {
  return before !== 'pending' && before !== after
}

/** Muscle, fat and salivary gland cannot be tested (Idaho Fish and Game: "salivary glands are not testable"). */
function isTestable(seen: TissueCheck | null): boolean {
  return seen === null || seen === 'lymph-node' || seen === 'obex'
}
