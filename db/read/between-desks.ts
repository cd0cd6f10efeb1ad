/** What a desk did on a day with things of other desks of its station: only a merged log can tell. */
import { sql } from 'kysely'
import type {
  CoolerNumber,
  DeskId,
  KitNumber,
  SampleNumber,
} from '../../shared-types/sample-number.ts'
import type { ReadableLog } from '../connection.ts'
import { type Params, prepareAll, prepareOne } from '../statement.ts'

type OfDay = Params<{ desk: DeskId; from: number; to: number }>

/** `entry` of one desk between two moments of its wall clock. */
function entriesOfDay(kinds: readonly string[], member: string) {
  const value = sql<string>`entry.body ->> ${sql.lit(member)}`
  return prepareAll((db, p: OfDay) =>
    db
      .selectFrom('entry')
      .select(['entry.kind', value.as('value')])
      .where('entry.kind', 'in', kinds)
      .where('entry.desk', '=', p('desk'))
      .where('entry.wall', '>=', p('from'))
      .where('entry.wall', '<=', p('to')),
  )
}

interface Day {
  readonly desk: DeskId
  readonly from: number
  readonly to: number
}

const movedRow = prepareOne((db, p: OfDay) =>
  db
    .selectFrom('entry')
    .select(
      sql<number>`coalesce(sum((body ->> '$.count') *
        ((body ->> '$.to.in' = 'other-desk') - (body ->> '$.from.in' = 'other-desk'))), 0)`.as(
        'count',
      ),
    )
    .where('kind', '=', 'kits.moved')
    .where('desk', '=', p('desk'))
    .where('wall', '>=', p('from'))
    .where('wall', '<=', p('to')),
)

/** Kits that the desk gave to other desks, less those it brought from them. */
export function kitsGivenToOthers(log: ReadableLog, day: Day): number {
  return movedRow(log, { ...day })?.count ?? 0
}

const coolerMoves = entriesOfDay(['bag.placed', 'bag.taken-out'], '$.cooler')

/** Bags the desk put into coolers of other desks, less those it took out, by cooler. */
export function bagsInCoolersOfOthers(
  log: ReadableLog,
  day: Day,
): ReadonlyMap<CoolerNumber, number> {
  const counts = new Map<CoolerNumber, number>()
  for (const { kind, value } of coolerMoves(log, { ...day })) {
    if (value.startsWith(day.desk)) continue
    const cooler = value as CoolerNumber
    counts.set(cooler, (counts.get(cooler) ?? 0) + (kind === 'bag.placed' ? 1 : -1))
  }
  return counts
}

const openings = entriesOfDay(['kit.opened'], '$.kit')
const seals = entriesOfDay(['bag.sealed'], '$.bag')
const voids = entriesOfDay(['label.voided'], '$.number')

const papersRow = prepareOne((db, p: Params<{ kit: KitNumber }>) =>
  db
    .selectFrom('label')
    .select((eb) => eb.fn.countAll<number>().as('count'))
    .where('kit', '=', p('kit'))
    .where(sql<string>`substr(number, 11, 1)`, 'in', ['K', 'H'])
    .where('void_ms', 'is', null),
)
const copiesRow = prepareOne((db, p: Params<{ number: SampleNumber }>) =>
  db
    .selectFrom('label')
    .select((eb) => eb.fn.countAll<number>().as('count'))
    .where('number', '=', p('number'))
    .where('void_ms', 'is', null),
)

/** Labels printed at other desks that this one stuck on or made void. */
export function labelsOfOthersUsed(log: ReadableLog, day: Day): number {
  const ofOthers = (rows: readonly { value: string }[]) =>
    rows.flatMap(({ value }) => (value.startsWith(day.desk) ? [] : [value as SampleNumber]))
  const papers = ofOthers(openings(log, { ...day })).map(
    (kit) => papersRow(log, { kit: kit as KitNumber })?.count ?? 0,
  )
  const bags = ofOthers(seals(log, { ...day })).map(
    (number) => copiesRow(log, { number })?.count ?? 0,
  )
  const voided = ofOthers(voids(log, { ...day })).length
  return [...papers, ...bags].reduce((sum, count) => sum + count, voided)
}
