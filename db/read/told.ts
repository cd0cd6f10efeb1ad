/** What hunters were told, what was done after a detection, and what still waits. */
import { sql } from 'kysely'
import type { FollowUpStep } from '../../shared-types/laboratory-result.ts'
import type { LocalDate } from '../../shared-types/local-date.ts'
import type { AnimalNumber } from '../../shared-types/sample-number.ts'
import type { ReadableLog } from '../connection.ts'
import type { FollowUpTable, HunterToldTable } from '../result-tables.ts'
import { type Params, prepareAll, prepareOne } from '../statement.ts'

/** The last word that each hunter was told, by animal. */
const lastTold = prepareAll((db) =>
  db
    .selectFrom('hunter_told')
    // SQLite takes the other columns from the row that holds the maximum.
    .select(['animal', 'word', sql<number>`max(ms)`.as('ms')])
    .groupBy('animal'),
)

export function lastToldWords(log: ReadableLog) {
  return new Map(lastTold(log).map(({ animal, word }) => [animal, word]))
}

const toldRow = prepareOne((db, p: Params<{ animal: AnimalNumber }>) =>
  db
    .selectFrom('hunter_told')
    .selectAll()
    .where('animal', '=', p('animal'))
    .orderBy('ms', 'desc')
    .orderBy('hash')
    .limit(1),
)

/** The last time the hunter of an animal was told, or null. */
export function lastToldOf(log: ReadableLog, animal: AnimalNumber): HunterToldTable | null {
  return toldRow(log, { animal }) ?? null
}

const followUpRows = prepareAll((db, p: Params<{ animal: AnimalNumber }>) =>
  db
    .selectFrom('follow_up')
    .selectAll()
    .where('animal', '=', p('animal'))
    .orderBy('ms')
    .orderBy('hash'),
)

/** What was done after a detection, each step as it was last said. */
export function followUpsOf(
  log: ReadableLog,
  animal: AnimalNumber,
): Map<FollowUpStep, FollowUpTable> {
  return new Map(followUpRows(log, { animal }).map((row) => [row.step, row]))
}

/** Bags that were handed off and have no result, or only a pending one, oldest first. */
export const bagsAwaiting = prepareAll((db) =>
  db
    .selectFrom('bag')
    .leftJoin('sample_result', 'sample_result.bag', 'bag.bag')
    .leftJoin('handoff', 'handoff.handoff', 'bag.handoff')
    .select(['bag.bag', 'bag.animal', 'bag.site', 'bag.handoff', 'bag.sealed_ms'])
    .select(['handoff.destination', 'handoff.signed_ms', 'sample_result.word'])
    .where('bag.place', '=', 'handed-off')
    .where((eb) =>
      eb.or([eb('sample_result.word', 'is', null), eb('sample_result.word', '=', 'pending')]),
    )
    .orderBy(sql`coalesce(handoff.signed_ms, bag.sealed_ms)`)
    .orderBy('bag.bag'),
)

const awaitingRow = prepareOne((db) =>
  db
    .selectFrom('bag')
    .leftJoin('sample_result', 'sample_result.bag', 'bag.bag')
    .select(sql<number>`coalesce(sum(sample_result.word is null), 0)`.as('unreported'))
    .select(sql<number>`coalesce(sum(sample_result.word = 'pending'), 0)`.as('pending'))
    .where('bag.place', '=', 'handed-off'),
)

/** Bags given to a courier: those nothing was reported of, and those the laboratory calls pending. */
export function countAwaiting(log: ReadableLog): { unreported: number; pending: number } {
  return awaitingRow(log) ?? { unreported: 0, pending: 0 }
}

/** Each animal with a contact that is still kept, by its day. */
export const animalsWithContact = prepareAll((db) =>
  db
    .selectFrom('animal')
    .innerJoin('contact', 'contact.digest', 'animal.contact')
    .select(['animal.animal', 'animal.day'])
    .orderBy('animal.day')
    .orderBy('animal.animal'),
)

/** Animals of which a bag was handed off. */
export const animalsSent = prepareAll((db) =>
  db.selectFrom('bag').select('animal').distinct().where('place', '=', 'handed-off'),
)

/** Tested and unsuitable samples by the sampler who opened the kit, and side. */
export const testedBySampler = prepareAll((db) =>
  db
    .selectFrom('sample_result')
    .innerJoin('bag', 'bag.bag', 'sample_result.bag')
    .innerJoin('kit', 'kit.kit', 'bag.kit')
    .select(['kit.sampler', 'sample_result.site'])
    .select((eb) => eb.fn.countAll<number>().as('tested'))
    .select(sql<number>`sum(sample_result.word = 'unsuitable')`.as('unsuitable'))
    .where('kit.sampler', 'is not', null)
    .where('sample_result.word', '<>', 'pending')
    .groupBy(['kit.sampler', 'sample_result.site']),
)

const purgeRows = prepareAll((db) =>
  db
    .selectFrom('entry')
    .select(['hash', 'wall', 'by', 'desk', 'seq'])
    .select(sql<LocalDate>`body ->> '$.upTo'`.as('upTo'))
    .select(sql<number>`body ->> '$.contacts'`.as('contacts'))
    .where('kind', '=', 'contacts.purged')
    .orderBy('ms', 'desc')
    .orderBy('n', 'desc'),
)

/** Every time contacts were erased, the latest first. */
export function contactPurges(log: ReadableLog) {
  return purgeRows(log)
}
