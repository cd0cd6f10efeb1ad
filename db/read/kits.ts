/** Numbered kits, and the balances of the kit ledger. */
import type { KitRecord } from '../../shared-types/kit.ts'
import type { AnimalNumber, KitNumber } from '../../shared-types/sample-number.ts'
import type { ReadableLog } from '../connection.ts'
import type { KitTable } from '../read-tables.ts'
import { type Params, prepareAll, prepareOne } from '../statement.ts'

const kitRow = prepareOne((db, p: Params<{ kit: KitNumber }>) =>
  db.selectFrom('kit').selectAll().where('kit', '=', p('kit')),
)

export function kitRecordOf(log: ReadableLog, kit: KitNumber): KitRecord | null {
  const row = kitRow(log, { kit })
  return row ? rowToKit(row) : null
}

const animalKitRows = prepareAll((db, p: Params<{ animal: AnimalNumber }>) =>
  db
    .selectFrom('kit')
    .selectAll()
    .where('animal', '=', p('animal'))
    .where('animal', 'is not', null)
    .orderBy('numbered_ms'),
)

/** Kits opened on an animal or printed for it, oldest first. */
export function kitsOfAnimal(log: ReadableLog, animal: AnimalNumber): KitRecord[] {
  return animalKitRows(log, { animal }).map(rowToKit)
}

// A cross join keeps its order: from the few animals in the line to their kits, not the other way.
const lineKitRows = prepareAll((db) =>
  db
    .selectFrom('animal')
    .crossJoin('kit')
    .selectAll('kit')
    .where('animal.state', 'in', ['waiting', 'with-sampler'])
    .whereRef('kit.animal', '=', 'animal.animal')
    .where('kit.animal', 'is not', null)
    .orderBy('kit.numbered_ms'),
)

/** Kits opened on or printed for each animal in the line, oldest first. */
export function kitsByAnimalInLine(log: ReadableLog): ReadonlyMap<AnimalNumber, KitRecord[]> {
  const kits = new Map<AnimalNumber, KitRecord[]>()
  for (const kit of lineKitRows(log).map(rowToKit)) {
    if (!kit.animal) continue
    const others = kits.get(kit.animal)
    if (others) others.push(kit)
    else kits.set(kit.animal, [kit])
  }
  return kits
}

const reservedRows = prepareAll((db) =>
  db
    .selectFrom('kit')
    .selectAll()
    .where('state', '=', 'reserved')
    .orderBy('numbered_ms')
    .orderBy('kit'),
)

/** Kits with labels that nobody has opened. */
export function reservedKits(log: ReadableLog): KitRecord[] {
  return reservedRows(log).map(rowToKit)
}

const latestRows = prepareAll((db) =>
  db
    .selectFrom('kit')
    .selectAll()
    .where('state', '!=', 'reserved')
    .orderBy('kit', 'desc')
    .limit(100),
)

/** The hundred kits opened or spoiled that were numbered last. */
export function latestKits(log: ReadableLog): KitRecord[] {
  return latestRows(log).map(rowToKit)
}

const allRows = prepareAll((db) => db.selectFrom('kit').selectAll().orderBy('kit'))

export function allKits(log: ReadableLog): KitRecord[] {
  return allRows(log).map(rowToKit)
}

const balanceRows = prepareAll((db) =>
  db
    .selectFrom('kit_line')
    .select((eb) => ['account', eb.fn.sum<number>('delta').as('count')])
    .groupBy('account'),
)

/** Kits by account key. Derived from the ledger's lines; the accounts together hold nothing. */
export function kitBalances(log: ReadableLog): ReadonlyMap<string, number> {
  return new Map(balanceRows(log).map(({ account, count }) => [account, count]))
}

const balanceRow = prepareOne((db, p: Params<{ account: string }>) =>
  db
    .selectFrom('kit_line')
    .select((eb) => eb.fn.coalesce(eb.fn.sum<number>('delta'), eb.lit(0)).as('count'))
    .where('account', '=', p('account')),
)

/** The kits in one account. */
export function kitBalance(log: ReadableLog, account: string): number {
  return balanceRow(log, { account })?.count ?? 0
}

const sentRow = prepareOne((db, p: Params<{ kit: KitNumber }>) =>
  db
    .selectFrom('kit')
    .innerJoin('bag', 'bag.animal', 'kit.animal')
    .select('bag.bag')
    .where('kit.kit', '=', p('kit'))
    .whereRef('bag.kit', '=', 'kit.kit')
    .where('bag.place', '=', 'handed-off')
    .limit(1),
)

/** Whether any bag of a kit has left with a courier. */
export function wasKitSent(log: ReadableLog, kit: KitNumber): boolean {
  return sentRow(log, { kit }) !== undefined
}

function rowToKit(row: KitTable): KitRecord {
  return {
    kit: row.kit,
    animal: row.animal,
    state: row.state,
    sampler: row.sampler,
    numberedMs: row.numbered_ms,
    openedMs: row.opened_ms,
  }
}
