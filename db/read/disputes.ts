/** What entries of a merged log say more than once, or against each other. */
import { sql } from 'kysely'
import type { Entry, EntryKind, KnownEntry } from '../../shared-types/entry.ts'
import type { DeskId } from '../../shared-types/sample-number.ts'
import type { ReadableLog } from '../connection.ts'
import { understood } from '../fold/fold.ts'
import { entriesOfKind, rowToEntry } from '../log/read-entries.ts'
import type { EntryTable, UnprovedTable } from '../schema.ts'
import { type NoParams, type Params, prepareAll, prepareOne } from '../statement.ts'

type Of<K extends EntryKind> = Extract<KnownEntry, { kind: K }>

/** Every entry of a kind, as this version understands it. */
export function knownOfKind<K extends EntryKind>(log: ReadableLog, kind: K): Of<K>[] {
  return [...entriesOfKind(log, kind)].flatMap((entry) => knownAs<K>(entry))
}

function knownAs<K extends EntryKind>(entry: Entry): Of<K>[] {
  const known = understood(entry)
  return known === null ? [] : [known as Of<K>]
}

/** The entries of a kind that share a member of their body with another entry of that kind. */
function repeated<K extends EntryKind>(kind: K, member: string) {
  const path = sql.lit(`$.${member}`)
  const rows = prepareAll<EntryTable, NoParams>((db) =>
    db
      .selectFrom('entry')
      .selectAll()
      .where('kind', '=', kind)
      .where(
        sql<boolean>`body ->> ${path} IN (SELECT body ->> ${path} FROM entry
          WHERE kind = ${sql.lit(kind)} GROUP BY 1 HAVING count(*) > 1)`,
      )
      .orderBy('ms')
      .orderBy('n')
      .orderBy('desk')
      .orderBy('seq')
      .orderBy('hash'),
  )
  return (log: ReadableLog): Of<K>[] => rows(log).flatMap((row) => knownAs<K>(rowToEntry(row)))
}

export const sealsOfOneBag = repeated('bag.sealed', 'bag')
export const placingsOfOneBag = repeated('bag.placed', 'bag')
export const openingsOfOneKit = repeated('kit.opened', 'kit')
export const checkInsOfOneNumber = repeated('animal.checked-in', 'animal')
export const finishesOfOneAnimal = repeated('animal.finished', 'animal')
export const amendmentsOfOneAnimal = repeated('animal.amended', 'animal')

/** Animals whose tag another animal has too. */
export const animalsSharingATag = prepareAll((db) =>
  db
    .selectFrom('animal')
    .select(['animal', 'desk', 'hunter', 'tag', 'species', 'sex', 'arrived_ms'])
    .where('tag', 'in', (eb) =>
      eb
        .selectFrom('animal')
        .select('tag')
        .where('state', '<>', 'struck-out')
        .groupBy('tag')
        .having(sql<boolean>`count(*) > 1`),
    )
    .where('state', '<>', 'struck-out')
    .orderBy('tag')
    .orderBy('animal'),
)

/** Corrections of animals whose day is closed, with where their day belongs. */
export const amendmentsOfClosedDays = prepareAll((db) =>
  db
    .selectFrom('entry')
    .innerJoin('animal', (join) => join.on(sql<boolean>`animal.animal = entry.body ->> '$.animal'`))
    .innerJoin('day', (join) =>
      join.onRef('day.desk', '=', 'animal.desk').onRef('day.date', '=', 'animal.day'),
    )
    .select(['animal.animal', 'animal.desk', 'day.date'])
    .select(['entry.hash', 'entry.ms', 'entry.n', 'entry.wall', 'entry.desk as by_desk'])
    .select(sql<string>`entry.body ->> '$.reason'`.as('reason'))
    .where('entry.kind', '=', 'animal.amended')
    .where('day.state', '=', 'closed'),
)

/**
 * How much later, at least, one desk's clock read when it told of what another desk had made: less than
 * nothing means that the clocks were apart, because an effect does not come before its cause.
 */
export interface ClockSight {
  /** The desk that told of it. */
  readonly desk: DeskId
  /** The desk that had made it. */
  readonly cause: DeskId
  readonly leastMs: number
  /** How many facts it rests on. */
  readonly facts: number
}

function sightings(kinds: readonly EntryKind[], member: string, table: string, madeMs: string) {
  const number = sql`entry.body ->> ${sql.lit(`$.${member}`)}`
  const told = sql<ClockSight>`(
    SELECT entry.desk AS desk, substr(${number}, 1, 6) AS cause,
      min(entry.wall - made.${sql.ref(madeMs)}) AS leastMs, count(*) AS facts
    FROM entry JOIN ${sql.table(table)} AS made ON made.${sql.ref(member)} = ${number}
    WHERE entry.kind IN (${sql.join(kinds.map((kind) => sql.lit(kind)))})
      AND substr(${number}, 1, 6) <> entry.desk
    GROUP BY 1, 2)`
  return prepareAll((db) =>
    db.selectFrom(told.as('told')).select(['desk', 'cause', 'leastMs', 'facts']),
  )
}

const sights = [
  sightings(['bag.placed', 'bag.taken-out', 'bag.discarded'], 'bag', 'bag', 'sealed_ms'),
  sightings(['animal.assigned', 'animal.finished', 'bag.sealed'], 'animal', 'animal', 'arrived_ms'),
  sightings(['kit.opened', 'kit.spoiled'], 'kit', 'kit', 'numbered_ms'),
]

/** What desks tell of each other's facts says about their clocks. */
export function clockSights(log: ReadableLog): ClockSight[] {
  return sights.flatMap((rows) => rows(log))
}

const unprovedRows = prepareAll((db) => db.selectFrom('unproved').selectAll().orderBy('key'))

/** What merges met and could not take in. */
export function unprovedFinds(log: ReadableLog): UnprovedTable[] {
  return unprovedRows(log)
}

/** Every settlement, oldest first. */
export const settlements = prepareAll((db) =>
  db.selectFrom('settlement').selectAll().orderBy('ms').orderBy('hash'),
)

const numbered = prepareOne((db, p: Params<{ desk: DeskId; seq: number }>) =>
  db
    .selectFrom('entry')
    .select('seq')
    .where('desk', '=', p('desk'))
    .where('seq', '=', p('seq'))
    .limit(1),
)

/** Whether the log holds an entry of this number of a desk. */
export function hasEntryNumber(log: ReadableLog, desk: DeskId, seq: number): boolean {
  return numbered(log, { desk, seq }) !== undefined
}

const followers = prepareAll((db, p: Params<{ desk: DeskId; hash: string; count: number }>) =>
  db
    .withRecursive('chain', (with_) =>
      with_
        .selectFrom('entry')
        .selectAll()
        .where('hash', '=', p('hash'))
        .where('desk', '=', p('desk'))
        .unionAll((also) =>
          also
            .selectFrom('entry')
            .innerJoin('chain', (join) =>
              join
                .onRef('entry.desk', '=', 'chain.desk')
                .on(sql<boolean>`entry.seq = chain.seq + 1`)
                .onRef('entry.prev', '=', 'chain.hash'),
            )
            .selectAll('entry'),
        ),
    )
    .selectFrom('chain')
    .selectAll()
    .limit(p('count')),
)

/** An entry by its hash and those that follow it, so many in all. */
export function entriesFollowing(
  log: ReadableLog,
  desk: DeskId,
  hash: string,
  count: number,
): Entry[] {
  return followers(log, { desk, hash, count }).map(rowToEntry)
}
