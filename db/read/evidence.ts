/** What in the log may explain a variance at the close. */
import type { VoidReason } from '../../shared-types/label.ts'
import type { LocalDate } from '../../shared-types/local-date.ts'
import type {
  AnimalNumber,
  KitNumber,
  PersonId,
  SampleNumber,
} from '../../shared-types/sample-number.ts'
import type { ReadableLog } from '../connection.ts'
import { type Params, prepareAll } from '../statement.ts'

type Since = Params<{ from: number }>

const forAnotherRows = prepareAll((db, p: Since) =>
  db
    .selectFrom('kit')
    .select(['kit', 'animal', 'sampler', 'opened_ms as ms'])
    .whereRef('opened_by', '<>', 'sampler')
    .where('opened_ms', '>=', p('from'))
    .orderBy('opened_ms'),
)

/** Kits opened since a moment that somebody else than the sampler told the desk of. */
export function kitsOpenedForAnother(
  log: ReadableLog,
  fromMs: number,
): { kit: KitNumber; animal: AnimalNumber; sampler: PersonId; ms: number }[] {
  return forAnotherRows(log, { from: fromMs }).flatMap(({ kit, animal, sampler, ms }) =>
    animal && sampler && ms !== null ? [{ kit, animal, sampler, ms }] : [],
  )
}

const voidedRows = prepareAll((db) =>
  db
    .selectFrom('kit')
    .innerJoin('label', 'label.kit', 'kit.kit')
    .select((eb) => ['kit.kit', eb.fn.max<number | null>('label.void_ms').as('ms')])
    .where('kit.state', '=', 'reserved')
    .where('label.void_reason', '=', 'kit-spoiled')
    .where((eb) =>
      eb.not(
        eb.exists(
          eb
            .selectFrom('label as live')
            .select('live.copy')
            .whereRef('live.kit', '=', 'kit.kit')
            .where('live.void_ms', 'is', null),
        ),
      ),
    )
    .groupBy('kit.kit')
    .orderBy('kit.kit'),
)

/** Kits with no good label left, and some made void as spoiled, that are not themselves recorded as spoiled. */
export function kitsVoidedAsSpoiled(log: ReadableLog): { kit: KitNumber; ms: number }[] {
  return voidedRows(log).flatMap(({ kit, ms }) => (ms === null ? [] : [{ kit, ms }]))
}

const reprintedRows = prepareAll((db, p: Since) =>
  db
    .selectFrom('label')
    .select(['number', 'copy', 'void_reason as reason', 'void_ms as ms'])
    .where('void_reason', 'in', ['lost', 'jammed'])
    .where('void_ms', '>=', p('from'))
    .where((eb) =>
      eb.exists(
        eb
          .selectFrom('label as later')
          .select('later.copy')
          .whereRef('later.number', '=', 'label.number')
          .whereRef('later.copy', '>', 'label.copy'),
      ),
    )
    .orderBy('void_ms'),
)

/** Labels lost or jammed since a moment and printed once more. */
export function reprintedLabels(
  log: ReadableLog,
  fromMs: number,
): { number: SampleNumber; copy: number; reason: VoidReason; ms: number }[] {
  return reprintedRows(log, { from: fromMs }).flatMap(({ number, copy, reason, ms }) =>
    reason && ms !== null ? [{ number, copy, reason, ms }] : [],
  )
}

const twiceRows = prepareAll((db, p: Params<{ day: LocalDate }>) =>
  db
    .selectFrom('animal')
    .select((eb) => ['tag', eb.fn.max('animal').as('animal')])
    .where('day', '=', p('day'))
    .where('tag', '<>', '')
    .where('state', '<>', 'struck-out')
    .groupBy('tag')
    .having((eb) => eb.fn.countAll(), '>', 1),
)

/** Tags checked in more than once on a day, each with the last animal that carries it. */
export function tagsSeenTwice(
  log: ReadableLog,
  day: LocalDate,
): { tag: string; animal: AnimalNumber }[] {
  return twiceRows(log, { day })
}

const handedRows = prepareAll((db) =>
  db
    .selectFrom('kit_line')
    .select((eb) => ['account', eb.fn.max('ms').as('ms')])
    .where('delta', '>', 0)
    .where('account', '>=', 'hands:')
    .where('account', '<', 'hands;')
    .groupBy('account'),
)

/** When kits last came into each pair of hands, by account key. */
export function lastHandedMs(log: ReadableLog): ReadonlyMap<string, number> {
  return new Map(handedRows(log).map(({ account, ms }) => [account, ms]))
}
