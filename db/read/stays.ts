/** Who was in a cooler when: what an excursion marks follows from it. */
import { sql } from 'kysely'
import type { BagNumber, CoolerNumber } from '../../shared-types/sample-number.ts'
import type { ReadableLog } from '../connection.ts'
import { type Params, prepareAll } from '../statement.ts'

/** A bag in a cooler from when to when, on the wall clocks of those who moved it. */
export interface Stay {
  readonly bag: BagNumber
  readonly fromMs: number
  /** Null while it lies there, or left in it. */
  readonly toMs: number | null
}

const moveRows = prepareAll((db, p: Params<{ cooler: CoolerNumber }>) =>
  db
    .selectFrom('entry')
    .select(['kind', 'wall', sql<BagNumber>`body ->> '$.bag'`.as('bag')])
    .where('kind', 'in', ['bag.placed', 'bag.taken-out'])
    .where(sql<boolean>`body ->> '$.cooler' = ${p('cooler')}`)
    .orderBy('ms')
    .orderBy('n')
    .orderBy('desk')
    .orderBy('seq')
    .orderBy('hash'),
)

/** Every stay of every bag in a cooler. */
export function staysIn(log: ReadableLog, cooler: CoolerNumber): Stay[] {
  const inside = new Map<BagNumber, number>()
  const over: Stay[] = []
  for (const { kind, wall, bag } of moveRows(log, { cooler })) {
    if (kind === 'bag.placed') {
      if (!inside.has(bag)) inside.set(bag, wall)
      continue
    }
    const fromMs = inside.get(bag)
    if (fromMs === undefined) continue
    over.push({ bag, fromMs, toMs: wall })
    inside.delete(bag)
  }
  return [...over, ...[...inside].map(([bag, fromMs]) => ({ bag, fromMs, toMs: null }))]
}
