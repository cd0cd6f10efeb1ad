/** Printed labels and what became of them. */
import { sql } from 'kysely'
import type { LabelFate, LabelRecord } from '../../shared-types/label.ts'
import type { StockName } from '../../shared-types/label-stock.ts'
import type { KitNumber, SampleNumber } from '../../shared-types/sample-number.ts'
import type { ReadableLog } from '../connection.ts'
import { type Params, prepareAll, prepareOne } from '../statement.ts'

/**
 * A copy that is not void is used once it is stuck on: a bag label when the bag is sealed, a card or
 * stub when its kit is opened, a cooler label at once. So no label has a fate stored twice.
 */
const fate = sql<LabelFate>`CASE
  WHEN void_ms IS NOT NULL THEN 'void'
  WHEN label.kit IS NULL THEN 'used'
  WHEN substr(number, 11, 1) IN ('K', 'H')
    THEN CASE WHEN (SELECT state FROM kit WHERE kit.kit = label.kit) = 'opened' THEN 'used' ELSE 'printed' END
  WHEN EXISTS (SELECT 1 FROM bag WHERE bag.bag = label.number AND bag.place <> 'discarded') THEN 'used'
  ELSE 'printed' END`

const kitLabelRows = prepareAll((db, p: Params<{ kit: KitNumber }>) =>
  db
    .selectFrom('label')
    .select(['number', 'copy', fate.as('fate')])
    .where('kit', '=', p('kit'))
    .orderBy('number')
    .orderBy('copy'),
)

/** Every printed copy of a kit's labels. */
export function labelsOfKit(log: ReadableLog, kit: KitNumber): LabelRecord[] {
  return kitLabelRows(log, { kit })
}

const copyRows = prepareAll((db, p: Params<{ number: SampleNumber }>) =>
  db
    .selectFrom('label')
    .select(['number', 'copy', fate.as('fate')])
    .where('number', '=', p('number'))
    .orderBy('copy'),
)

/** The copies printed of one number, first to last. */
export function copiesOf(log: ReadableLog, number: SampleNumber): LabelRecord[] {
  return copyRows(log, { number })
}

const voidedRow = prepareOne((db, p: Params<{ number: SampleNumber }>) =>
  db
    .selectFrom('entry')
    .select('hash')
    .where('kind', '=', 'label.voided')
    .where(sql<string>`body ->> '$.number'`, '=', p('number'))
    .limit(1),
)

/** Whether an entry of this log made a label void, also one that another desk printed. */
export function wasVoidedHere(log: ReadableLog, number: SampleNumber): boolean {
  return voidedRow(log, { number }) !== undefined
}

const fateRows = prepareAll((db) =>
  db
    .selectFrom('label')
    .select((eb) => [fate.as('fate'), eb.fn.countAll<number>().as('count')])
    .groupBy('fate'),
)
const deliveredRow = prepareOne((db) =>
  db.selectFrom('day').select((eb) => eb.fn.sum<number | null>('blank_labels').as('count')),
)
const usedRow = prepareOne((db) =>
  db.selectFrom('label_run').select((eb) => eb.fn.sum<number | null>('blanks').as('count')),
)

export interface LabelTally {
  /** Blank labels that should be left on the rolls and sheets. */
  readonly blanks: number
  readonly printed: number
  readonly used: number
  readonly void: number
}

/** Labels by fate; `printed` are those made and not yet stuck on or void. */
export function labelTally(log: ReadableLog): LabelTally {
  const counts = new Map(fateRows(log).map(({ fate, count }) => [fate, count]))
  return {
    blanks: (deliveredRow(log)?.count ?? 0) - (usedRow(log)?.count ?? 0),
    printed: counts.get('printed') ?? 0,
    used: counts.get('used') ?? 0,
    void: counts.get('void') ?? 0,
  }
}

const runColumns = [
  'hash as run',
  'by_hand as byHand',
  'goes_on as goesOn',
  'goes_on_from as from',
] as const

const runOfRow = prepareOne((db, p: Params<{ number: SampleNumber }>) =>
  db
    .selectFrom('label')
    .innerJoin('label_run', 'label_run.hash', 'label.run')
    .select(runColumns)
    .where('number', '=', p('number'))
    .orderBy('copy', 'desc')
    .limit(1),
)
const latestRunRow = prepareOne((db) =>
  db.selectFrom('label_run').select(runColumns).orderBy('ms', 'desc').orderBy('hash').limit(1),
)
const runRow = prepareOne((db, p: Params<{ run: string }>) =>
  db.selectFrom('label_run').select(runColumns).where('hash', '=', p('run')),
)
const labelRows = prepareAll((db, p: Params<{ run: string; from: number }>) =>
  db
    .selectFrom('label')
    .select(['number', 'copy', 'kit', 'stock', 'run', 'place', fate.as('fate')])
    .where('run', '=', p('run'))
    .where('place', '>=', p('from'))
    .orderBy('place'),
)

/** A label of a run: of which printing it is, and its place there. */
export interface PrintedLabel extends LabelRecord {
  readonly kit: KitNumber | null
  readonly run: string
  readonly place: number
}

/** One printing of labels, in the order in which they come out of the printer. */
export interface LabelRunRecord {
  readonly run: string
  readonly stock: StockName
  readonly byHand: boolean
  readonly labels: readonly PrintedLabel[]
}

/** The labels of a run from a place on, and of the run that goes on after it. */
function labelsFrom(
  log: ReadableLog,
  run: string,
  from: number,
  seen: readonly string[],
): ReturnType<typeof labelRows> {
  const labels = labelRows(log, { run, from })
  const row = runRow(log, { run })
  // A copied file that lived on could name runs in a ring.
  if (!row?.goesOn || seen.includes(row.goesOn)) return labels
  return [...labels, ...labelsFrom(log, row.goesOn, row.from ?? 0, [...seen, row.goesOn])]
}

/** The run that the latest copy of a number came from, or without a number the latest run. */
export function labelRunOf(log: ReadableLog, number: SampleNumber | null): LabelRunRecord | null {
  const found = number === null ? latestRunRow(log) : runOfRow(log, { number })
  if (!found) return null
  const { run, byHand } = found
  const labels = labelsFrom(log, run, 0, [run])
  const [first] = labels
  return first ? { run, stock: first.stock, byHand: byHand === 1, labels } : null
}
