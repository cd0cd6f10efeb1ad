/** Coolers, what is in them and how cold they were. */
import type { CoolerRecord } from '../../shared-types/cooler.ts'
import type { CoolerNumber } from '../../shared-types/sample-number.ts'
import type { ReadableLog } from '../connection.ts'
import type { CoolerTable } from '../read-tables.ts'
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

/** One temperature reading; `by` is the name of the person who read it. */
export interface Reading {
  readonly ms: number
  readonly celsius: number
  readonly excursion: boolean
  readonly by: string
}

const readingRows = prepareAll((db, p: Params<{ cooler: CoolerNumber }>) =>
  db
    .selectFrom('reading')
    .leftJoin('person', 'person.person', 'reading.by')
    .select(['reading.ms', 'reading.celsius', 'reading.excursion', 'person.name'])
    .where('reading.cooler', '=', p('cooler'))
    .orderBy('reading.ms', 'desc'),
)

/** A cooler's readings, the latest first. */
export function readingsOf(log: ReadableLog, cooler: CoolerNumber): Reading[] {
  return readingRows(log, { cooler }).map((row) => ({
    ms: row.ms,
    celsius: row.celsius,
    excursion: row.excursion === 1,
    by: row.name ?? '',
  }))
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
      'person.name as by',
    ])
    .where('reading.excursion', '=', 1)
    .where('reading.ms', '>=', p('from'))
    .where('reading.ms', '<', p('before'))
    .orderBy('reading.ms'),
)

/** Readings outside the limits in a period, with the names of cooler and reader. */
export function excursionsIn(log: ReadableLog, fromMs: number, beforeMs: number) {
  return excursionRows(log, { from: fromMs, before: beforeMs })
}
