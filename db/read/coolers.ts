/** Coolers, what is in them and how cold they were. */
import type { CoolerRecord } from '../../shared-types/cooler.ts'
import type { CoolerNumber } from '../../shared-types/sample-number.ts'
import type { ReadableLog } from '../connection.ts'
import type { CoolerTable, ReadingTable } from '../read-tables.ts'
import { type Params, prepareAll, prepareOne } from '../statement.ts'

const coolerRows = prepareAll((db) => db.selectFrom('cooler').selectAll().orderBy('cooler'))

export function coolers(log: ReadableLog): CoolerRecord[] {
  return coolerRows(log).map(rowToCooler)
}

const coolerRow = prepareOne((db, p: Params<{ cooler: CoolerNumber }>) =>
  db.selectFrom('cooler').selectAll().where('cooler', '=', p('cooler')),
)

export function coolerOf(log: ReadableLog, cooler: CoolerNumber): CoolerRecord | null {
  const row = coolerRow(log, { cooler })
  return row ? rowToCooler(row) : null
}

function rowToCooler(row: CoolerTable): CoolerRecord {
  return { ...row }
}

const bagTallyRow = prepareOne((db, p: Params<{ cooler: CoolerNumber }>) =>
  db
    .selectFrom('bag')
    .select((eb) => eb.fn.countAll<number>().as('count'))
    .where('cooler', '=', p('cooler'))
    .where('cooler', 'is not', null),
)

/** How many bags a cooler holds. */
export function bagTally(log: ReadableLog, cooler: CoolerNumber): number {
  return bagTallyRow(log, { cooler })?.count ?? 0
}

const oldestFreshRow = prepareOne((db, p: Params<{ cooler: CoolerNumber }>) =>
  db
    .selectFrom('bag')
    .select((eb) => eb.fn.min<number | null>('sealed_ms').as('ms'))
    .where('cooler', '=', p('cooler'))
    .where('cooler', 'is not', null)
    .where('kept', '=', 'fresh'),
)

/** When the oldest fresh bag in a cooler was sealed, or null when there is none. */
export function oldestFreshMs(log: ReadableLog, cooler: CoolerNumber): number | null {
  return oldestFreshRow(log, { cooler })?.ms ?? null
}

const sealRow = prepareOne((db, p: Params<{ seal: string }>) =>
  db
    .selectFrom('seal')
    .innerJoin('cooler', 'cooler.cooler', 'seal.cooler')
    .select(['cooler.name', 'seal.broken_ms as brokenMs'])
    .where('seal.seal', '=', p('seal'))
    .orderBy('seal.sealed_ms', 'desc')
    .limit(1),
)

/** Where a seal with this number was put on, last if more than once; null if nowhere yet. */
export function sealUse(
  log: ReadableLog,
  seal: string,
): { name: string; brokenMs: number | null } | null {
  return sealRow(log, { seal }) ?? null
}

/** One temperature reading; `by` is the name of the person who read it. */
export interface Reading {
  readonly ms: number
  readonly celsius: number
  readonly excursion: boolean
  readonly by: string
  /** The logger's file; empty where a person read it. */
  readonly source: string
}

const readingRows = prepareAll((db, p: Params<{ cooler: CoolerNumber }>) =>
  db
    .selectFrom('reading')
    .leftJoin('person', 'person.person', 'reading.by')
    .select(['reading.ms', 'reading.celsius', 'reading.excursion', 'reading.source', 'person.name'])
    .where('reading.cooler', '=', p('cooler'))
    .orderBy('reading.ms', 'desc')
    .orderBy('reading.hash'),
)

const lastReadingRow = prepareOne((db, p: Params<{ cooler: CoolerNumber }>) =>
  db
    .selectFrom('reading')
    .leftJoin('person', 'person.person', 'reading.by')
    .select(['reading.ms', 'reading.celsius', 'reading.excursion', 'reading.source', 'person.name'])
    .where('reading.cooler', '=', p('cooler'))
    .orderBy('reading.log_ms', 'desc')
    .orderBy('reading.hash')
    .limit(1),
)

type ReadingRow = Pick<ReadingTable, 'ms' | 'celsius' | 'excursion' | 'source'> & {
  name: string | null
}

function rowToReading({ ms, celsius, excursion, source, name }: ReadingRow): Reading {
  return { ms, celsius, excursion: excursion === 1, by: name ?? '', source }
}

/**
 * How cold a cooler was last, or null if nobody read it yet. The last in the order of the log: a reading
 * made after a clock was put back is the last, though its hour is earlier.
 */
export function lastReadingOf(log: ReadableLog, cooler: CoolerNumber): Reading | null {
  const row = lastReadingRow(log, { cooler })
  return row ? rowToReading(row) : null
}

/** A cooler's readings, the latest first. */
export function readingsOf(log: ReadableLog, cooler: CoolerNumber): Reading[] {
  return readingRows(log, { cooler }).map(rowToReading)
}

const excursionRows = prepareAll((db, p: Params<{ from: number; before: number }>) =>
  db
    .selectFrom('reading')
    .innerJoin('cooler', 'cooler.cooler', 'reading.cooler')
    .leftJoin('person', 'person.person', 'reading.by')
    .select([
      'cooler.name as cooler',
      'cooler.keeping',
      'reading.ms',
      'reading.celsius',
      'reading.source',
      'person.name as by',
    ])
    .where('reading.excursion', '=', 1)
    .where('reading.ms', '>=', p('from'))
    .where('reading.ms', '<', p('before'))
    .orderBy('reading.ms'),
)

/**
 * Readings outside the limits in a period, with the names of cooler and reader. Of a logger's file
 * only the warmest of each cooler: it may hold thousands.
 */
export function excursionsIn(log: ReadableLog, fromMs: number, beforeMs: number) {
  const rows = excursionRows(log, { from: fromMs, before: beforeMs })
  const warmest = new Map<string, (typeof rows)[number]>()
  for (const row of rows) {
    const key = `${row.cooler} ${row.source}`
    if (row.celsius > (warmest.get(key)?.celsius ?? Number.NEGATIVE_INFINITY)) warmest.set(key, row)
  }
  return rows.filter(
    (row) => row.source === '' || warmest.get(`${row.cooler} ${row.source}`) === row,
  )
}
