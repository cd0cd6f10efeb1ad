/** Tissue that could not become a sample: what was seen instead, and what was not taken. */
import type { LocalDate } from '../../shared-types/local-date.ts'
import type { MissedReason, TissueCheck, TissueSite } from '../../shared-types/tissue.ts'
import type { ReadableLog } from '../connection.ts'
import { type Params, prepareAll } from '../statement.ts'

type Period = Params<{ from: number; before: number }>

const lookRows = prepareAll((db, p: Period) =>
  db
    .selectFrom('look')
    .leftJoin('person', 'person.person', 'look.sampler')
    .select((eb) => [
      'look.site',
      'look.seen',
      'person.name as sampler',
      eb.fn.countAll<number>().as('count'),
    ])
    .where('look.ms', '>=', p('from'))
    .where('look.ms', '<', p('before'))
    .groupBy(['look.site', 'look.seen', 'person.name'])
    .orderBy('person.name'),
)

/** How often each sampler saw each tissue at each site in a period. */
export function looksBySampler(
  log: ReadableLog,
  fromMs: number,
  beforeMs: number,
): { site: TissueSite; seen: TissueCheck; sampler: string; count: number }[] {
  return lookRows(log, { from: fromMs, before: beforeMs }).map((row) => ({
    ...row,
    sampler: row.sampler ?? '',
  }))
}

const missedRows = prepareAll((db, p: Params<{ day: LocalDate }>) =>
  db
    .selectFrom('tissue')
    .innerJoin('animal', 'animal.animal', 'tissue.animal')
    .leftJoin('person', 'person.person', 'animal.sampler')
    .select((eb) => [
      'tissue.missed',
      'person.name as sampler',
      eb.fn.countAll<number>().as('count'),
    ])
    .where('animal.day', '=', p('day'))
    .where('tissue.missed', 'is not', null)
    .groupBy(['tissue.missed', 'person.name'])
    .orderBy('person.name'),
)

/** Sites not taken from the animals of a day, by reason and sampler. */
export function missedBySampler(
  log: ReadableLog,
  day: LocalDate,
): { missed: MissedReason; sampler: string; count: number }[] {
  return missedRows(log, { day }).flatMap(({ missed, sampler, count }) =>
    missed ? [{ missed, sampler: sampler ?? '', count }] : [],
  )
}
