/** Bags and the tissue in them. */
import type { HarvestPlace, Species } from '../../shared-types/animal.ts'
import type {
  AnimalNumber,
  BagNumber,
  CoolerNumber,
  HandoffNumber,
} from '../../shared-types/sample-number.ts'
import type { BagRecord, TissueCheck, TissueRecord } from '../../shared-types/tissue.ts'
import type { ReadableLog } from '../connection.ts'
import type { BagTable } from '../read-tables.ts'
import { type Params, prepareAll, prepareOne } from '../statement.ts'

const bagRow = prepareOne((db, p: Params<{ bag: BagNumber }>) =>
  db.selectFrom('bag').selectAll().where('bag', '=', p('bag')),
)

export function bagOf(log: ReadableLog, bag: BagNumber): BagRecord | null {
  const row = bagRow(log, { bag })
  return row ? rowToBag(row) : null
}

/** A bag with what the documents say of it. */
export type ListedBag = BagRecord & {
  readonly species: Species
  readonly check: TissueCheck | null
  readonly harvest: HarvestPlace
}
type ListedRow = BagTable & { species: Species; seen: TissueCheck | null; harvest: string }

function rowToListed(row: ListedRow): ListedBag {
  const harvest = JSON.parse(row.harvest) as HarvestPlace
  return { ...rowToBag(row), species: row.species, check: row.seen, harvest }
}

const benchRows = prepareAll((db) =>
  db
    .selectFrom('bag')
    .innerJoin('animal', 'animal.animal', 'bag.animal')
    .leftJoin('tissue', 'tissue.bag', 'bag.bag')
    .selectAll('bag')
    .select(['animal.species', 'animal.place as harvest', 'tissue.seen'])
    .where('bag.place', '=', 'bench')
    .orderBy('bag.sealed_ms')
    .orderBy('bag.bag'),
)

/** Sealed bags that are in no cooler yet, the oldest first. */
export function bagsOnBench(log: ReadableLog): ListedBag[] {
  return benchRows(log).map(rowToListed)
}

const lateRow = prepareOne((db, p: Params<{ before: number }>) =>
  db
    .selectFrom('bag')
    .select((eb) => eb.fn.countAll<number>().as('count'))
    .where('place', '=', 'bench')
    .where('sealed_ms', '<', p('before')),
)

/** How many bags on the bench were sealed before a moment. */
export function bagsOnBenchSince(log: ReadableLog, beforeMs: number): number {
  return lateRow(log, { before: beforeMs })?.count ?? 0
}

const coolerRows = prepareAll((db, p: Params<{ cooler: CoolerNumber }>) =>
  db
    .selectFrom('bag')
    .innerJoin('animal', 'animal.animal', 'bag.animal')
    .leftJoin('tissue', 'tissue.bag', 'bag.bag')
    .selectAll('bag')
    .select(['animal.species', 'animal.place as harvest', 'tissue.seen'])
    .where('bag.cooler', '=', p('cooler'))
    .where('bag.cooler', 'is not', null)
    .orderBy('bag.bag'),
)

/** The bags in a cooler in the order of their numbers, as laboratories ask for them. */
export function bagsInCooler(log: ReadableLog, cooler: CoolerNumber): ListedBag[] {
  return coolerRows(log, { cooler }).map(rowToListed)
}

const allRows = prepareAll((db) =>
  db
    .selectFrom('bag')
    .innerJoin('animal', 'animal.animal', 'bag.animal')
    .leftJoin('tissue', 'tissue.bag', 'bag.bag')
    .selectAll('bag')
    .select(['animal.species', 'animal.place as harvest', 'tissue.seen'])
    .orderBy('bag.bag'),
)

export function allBags(log: ReadableLog): ListedBag[] {
  return allRows(log).map(rowToListed)
}

const handoffOfBagRow = prepareOne((db, p: Params<{ bag: BagNumber }>) =>
  db.selectFrom('bag').select('handoff').where('bag', '=', p('bag')),
)

/** The handoff a bag left with, or null while it is here. */
export function handoffOfBag(log: ReadableLog, bag: BagNumber): HandoffNumber | null {
  return handoffOfBagRow(log, { bag })?.handoff ?? null
}

const tissueRows = prepareAll((db, p: Params<{ animal: AnimalNumber }>) =>
  db.selectFrom('tissue').selectAll().where('animal', '=', p('animal')),
)

/** What is known of each site of an animal; a site nobody looked at is not in the list. */
export function tissuesOf(log: ReadableLog, animal: AnimalNumber): TissueRecord[] {
  return tissueRows(log, { animal }).map((row) => ({
    site: row.site,
    seen: row.seen,
    sizeMm: row.size_mm,
    missed: row.missed,
    missedWords: row.missed_words,
    bag: row.bag,
  }))
}

const lookRows = prepareAll((db, p: Params<{ from: number; before: number }>) =>
  db
    .selectFrom('look')
    .select((eb) => ['site', 'seen', eb.fn.countAll<number>().as('count')])
    .where('ms', '>=', p('from'))
    .where('ms', '<', p('before'))
    .groupBy(['site', 'seen'])
    .orderBy('site')
    .orderBy('seen'),
)

/** How often each tissue was seen at each site in a period, wrong tissue included. */
export function looksBySite(log: ReadableLog, fromMs: number, beforeMs: number) {
  return lookRows(log, { from: fromMs, before: beforeMs })
}

function rowToBag(row: BagTable): BagRecord {
  return {
    bag: row.bag,
    animal: row.animal,
    kit: row.kit,
    site: row.site,
    kept: row.kept,
    sealedMs: row.sealed_ms,
    place: row.place,
    cooler: row.cooler,
  }
}
