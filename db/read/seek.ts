/** Anything found by the beginning of its number, tag, hunter or name. */
import { sql } from 'kysely'
import type { Entry } from '../../shared-types/entry.ts'
import type { AnimalNumber, BagNumber, KitNumber } from '../../shared-types/sample-number.ts'
import { orderStamp } from '../../shared-types/stamp.ts'
import type { ReadableLog } from '../connection.ts'
import { rowToEntry } from '../log/read-entries.ts'
import { type Params, prepareAll } from '../statement.ts'

type Beginning = Params<{ from: string; to: string }>

/** As many of one kind as are shown. */
const most = 6

const animalRows = prepareAll((db, p: Beginning) =>
  db
    .selectFrom('animal')
    .select('animal')
    .where('animal', '>=', p('from') as never)
    .where('animal', '<', p('to') as never)
    .orderBy('animal')
    .limit(most),
)
const kitRows = prepareAll((db, p: Beginning) =>
  db
    .selectFrom('kit')
    .select('kit')
    .where('kit', '>=', p('from') as never)
    .where('kit', '<', p('to') as never)
    .orderBy('kit')
    .limit(most),
)
const bagRows = prepareAll((db, p: Beginning) =>
  db
    .selectFrom('bag')
    .select('bag')
    .where('bag', '>=', p('from') as never)
    .where('bag', '<', p('to') as never)
    .orderBy('bag')
    .limit(most),
)
const tagRows = prepareAll((db, p: Beginning) =>
  db
    .selectFrom('animal')
    .select('tag')
    .distinct()
    .where('tag', '>=', p('from'))
    .where('tag', '<', p('to'))
    .orderBy('tag')
    .limit(most),
)
const hunterRows = prepareAll((db, p: Beginning) =>
  db
    .selectFrom('animal')
    .select('hunter')
    .distinct()
    .where('hunter', '>=', p('from'))
    .where('hunter', '<', p('to'))
    .orderBy('hunter')
    .limit(most),
)

const range = (text: string) => ({ from: text, to: `${text}\uffff` })

/** Numbers of animals, kits and bags that begin so. */
export function numbersBeginning(
  log: ReadableLog,
  text: string,
): { animals: AnimalNumber[]; kits: KitNumber[]; bags: BagNumber[] } {
  return {
    animals: animalRows(log, range(text)).map(({ animal }) => animal),
    kits: kitRows(log, range(text)).map(({ kit }) => kit),
    bags: bagRows(log, range(text)).map(({ bag }) => bag),
  }
}

export function tagsBeginning(log: ReadableLog, text: string): string[] {
  return tagRows(log, range(text)).map(({ tag }) => tag)
}

export function huntersBeginning(log: ReadableLog, text: string): string[] {
  return hunterRows(log, range(text)).map(({ hunter }) => hunter)
}

const hunterAnimals = prepareAll((db, p: Params<{ hunter: string }>) =>
  db
    .selectFrom('animal')
    .select('animal')
    .where('hunter', '=', p('hunter'))
    .orderBy('arrived_ms')
    .limit(50),
)

export function animalsOfHunter(log: ReadableLog, hunter: string): AnimalNumber[] {
  return hunterAnimals(log, { hunter }).map(({ animal }) => animal)
}

/** A kit, cooler or handoff is named by entries of many kinds: they are found by its number in the text. */
const naming = prepareAll((db, p: Params<{ number: string }>) =>
  db
    .selectFrom('entry')
    .selectAll()
    .where(sql<number>`instr(body, ${p('number')})`, '>', 0),
)

/** Every entry in whose body a number stands, oldest first. Reads the whole log: for one story at a time. */
export function entriesNaming(log: ReadableLog, number: string): Entry[] {
  return naming(log, { number })
    .map(rowToEntry)
    .toSorted((a, b) => orderStamp(a.at, b.at) || a.seq - b.seq)
}
