/** Animals by unit and class with how far their samples have come: what coverage is counted from. */
import { type SqlBool, sql } from 'kysely'
import type { AgeClass, Sex, Species } from '../../shared-types/animal.ts'
import type { CoveragePlan, UnitOutlined } from '../../shared-types/coverage.ts'
import type { ResultWord } from '../../shared-types/laboratory-result.ts'
import type { LocalDate } from '../../shared-types/local-date.ts'
import type { DeskId } from '../../shared-types/sample-number.ts'
import type { TissueSite } from '../../shared-types/tissue.ts'
import type { ReadableLog } from '../connection.ts'
import { type Params, prepareAll, prepareOne } from '../statement.ts'

/** The best of an animal's bags: none sealed, only tissue that is no node or obex, or a right one. */
export type BaggedTissue = 'none' | 'wrong' | 'right'

/** Animals that are alike in everything coverage asks about. */
export interface AlikeAnimals {
  /** Null where nobody knows the unit. */
  readonly unit: string | null
  readonly species: Species
  readonly sex: Sex
  readonly age: AgeClass
  readonly tissue: BaggedTissue
  /** The latest results of the samples; of two of one site the graver. */
  readonly results: readonly { readonly site: TissueSite; readonly word: ResultWord }[]
  readonly animals: number
}

/** One digit a site; two samples of a site give the graver digit, never a sum. */
const wordOfDigit: readonly (ResultWord | null)[] = [
  null,
  'unsuitable',
  'not-detected',
  'pending',
  'presumptive',
  'detected',
]
const placeOfSite: Record<TissueSite, number> = { left: 1, right: 10, obex: 100 }
const sites = Object.keys(placeOfSite) as TissueSite[]

const digit = sql.raw(
  `CASE r.word ${wordOfDigit.flatMap((word, at) => (word === null ? [] : [`WHEN '${word}' THEN ${at}`])).join(' ')} END`,
)
const digitOf = (site: TissueSite) =>
  sql`${sql.raw(String(placeOfSite[site]))} * max(CASE r.site WHEN ${sql.raw(`'${site}'`)} THEN ${digit} ELSE 0 END)`

/** Positive: digits of results. Else no result yet: 0 none, -1 wrong, -2 right tissue in a bag. */
const stage = sql<number>`coalesce(
  (SELECT ${sql.join(sites.map(digitOf), sql` + `)} FROM sample_result r WHERE r.animal = animal.animal),
  (SELECT min(CASE WHEN t.bag IS NULL THEN 0 WHEN t.seen IN ('lymph-node', 'obex') THEN -2 ELSE -1 END)
     FROM tissue t WHERE t.animal = animal.animal),
  0)`

/**
 * Grouped by SQLite: 60,000 animals come out as some hundred rows. The index `animal_of_class` gives
 * unit, species, sex and age without the animal's row, and the two inner queries are one search each.
 */
const alikeRows = prepareAll((db, p: Params<{ unit: string | null }>) =>
  db
    .selectFrom((eb) =>
      eb
        .selectFrom('animal')
        .select(['unit', 'species', 'sex', 'age', stage.as('stage')])
        .where('state', '<>', 'struck-out')
        .where('duplicate_of', 'is', null)
        .where(sql<SqlBool>`(${p('unit')} IS NULL OR unit = ${p('unit')})`)
        .as('one'),
    )
    .select((eb) => [
      'unit',
      'species',
      'sex',
      'age',
      'stage',
      eb.fn.countAll<number>().as('animals'),
    ])
    .groupBy(['unit', 'species', 'sex', 'age', 'stage'])
    .orderBy('unit'),
)

/**
 * Every animal but those whose check-in was taken back or that are another's record once more, or only
 * those of one unit.
 */
export function alikeAnimals(log: ReadableLog, unit: string | null = null): AlikeAnimals[] {
  return alikeRows(log, { unit }).map(({ stage: at, ...row }) => ({
    ...row,
    tissue: tissueAt(at),
    results: resultsAt(at),
  }))
}

function tissueAt(at: number): BaggedTissue {
  return at === 0 ? 'none' : at === -1 ? 'wrong' : 'right'
}

function resultsAt(at: number): AlikeAnimals['results'] {
  return sites.flatMap((site) => {
    const word = at > 0 ? wordOfDigit[Math.floor(at / placeOfSite[site]) % 10] : null
    return word ? [{ site, word }] : []
  })
}

const planRow = prepareOne((db, p: Params<{ desk: DeskId }>) =>
  db
    .selectFrom('coverage_plan')
    .select('plan')
    .orderBy(sql`desk = ${p('desk')}`, 'desc')
    .orderBy('ms', 'desc')
    .orderBy('desk')
    .limit(1),
)

/** The plan of this desk; where it set none, the latest that another desk of the log did. */
export function coveragePlanOf(log: ReadableLog): CoveragePlan | null {
  const row = planRow(log, { desk: log.desk })
  return row ? (JSON.parse(row.plan) as CoveragePlan) : null
}

const outlineRows = prepareAll((db) => db.selectFrom('unit_outline').selectAll().orderBy('unit'))

/** The outlines of units that an office supplied. */
export function outlinesIn(log: ReadableLog): Pick<UnitOutlined, 'unit' | 'polygons'>[] {
  return outlineRows(log).map(({ unit, polygons }) => ({
    unit,
    polygons: JSON.parse(polygons) as UnitOutlined['polygons'],
  }))
}

/** Animals checked in and sampled, by the station's day. */
export const sampledByDay = prepareAll((db) =>
  db
    .selectFrom('animal')
    .select((eb) => [
      'day',
      eb.fn.countAll<number>().as('checked'),
      sql<number>`sum(outcome IN ('both', 'one'))`.as('sampled'),
    ])
    .where('state', '<>', 'struck-out')
    .where('duplicate_of', 'is', null)
    .groupBy('day')
    .orderBy('day'),
)

const testedRows = prepareAll((db) =>
  db
    .selectFrom('sample_result')
    .select((eb) => ['tested', eb.fn.count<number>('animal').distinct().as('animals')])
    .where('tested', 'is not', null)
    .where('word', 'in', ['detected', 'not-detected', 'presumptive'])
    .groupBy('tested')
    .orderBy('tested'),
)

/** Animals by the day the laboratory tested a sample of theirs. */
export function testedByDay(log: ReadableLog): { day: LocalDate; animals: number }[] {
  return testedRows(log).flatMap(({ tested, animals }) =>
    tested === null ? [] : [{ day: tested, animals }],
  )
}

/** Samples by whole days from the courier's signature to the result in this log. */
export const turnaroundDays = prepareAll((db) =>
  db
    .selectFrom('sample_result')
    .innerJoin('bag', 'bag.bag', 'sample_result.bag')
    .innerJoin('handoff', 'handoff.handoff', 'bag.handoff')
    .select((eb) => [
      // A clock that was put back may give a result before its handoff.
      sql<number>`max(0, sample_result.ms - handoff.signed_ms) / 86400000`.as('days'),
      eb.fn.countAll<number>().as('samples'),
    ])
    .where('handoff.signed_ms', 'is not', null)
    .where('sample_result.word', '<>', 'pending')
    .groupBy('days')
    .orderBy('days'),
)

const awayRow = prepareOne((db) =>
  db
    .selectFrom('bag')
    .select((eb) => eb.fn.countAll<number>().as('bags'))
    .where('place', '=', 'handed-off'),
)

/** Bags that a courier took. */
export function bagsAway(log: ReadableLog): number {
  return awayRow(log)?.bags ?? 0
}
