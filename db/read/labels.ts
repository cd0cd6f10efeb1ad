/** Printed labels and what became of them. */
import { sql } from 'kysely'
import type { LabelFate, LabelRecord } from '../../shared-types/label.ts'
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

const fateRows = prepareAll((db) =>
  db
    .selectFrom('label')
    .select((eb) => [fate.as('fate'), eb.fn.countAll<number>().as('count')])
    .groupBy('fate'),
)
const deliveredRow = prepareOne((db) =>
  db.selectFrom('day').select((eb) => eb.fn.sum<number | null>('blank_labels').as('count')),
)
const runRow = prepareOne((db) =>
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
    blanks: (deliveredRow(log)?.count ?? 0) - (runRow(log)?.count ?? 0),
    printed: counts.get('printed') ?? 0,
    used: counts.get('used') ?? 0,
    void: counts.get('void') ?? 0,
  }
}
