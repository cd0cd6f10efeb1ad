import type { Entry } from '../../shared-types/entry.ts'
import { type KitAccount, kitAccountKey } from '../../shared-types/kit.ts'
import type { Folds } from './fold.ts'
import { patch, put, type RowWrite } from './row-write.ts'

/** One transfer of the ledger: as many kits leave one account as reach the other. */
export function kitTransfer(
  { hash, at }: Pick<Entry, 'hash' | 'at'>,
  from: KitAccount,
  to: KitAccount,
  count: number,
): RowWrite[] {
  const line = (number: 0 | 1, account: KitAccount, delta: number) =>
    put('kit_line', { hash, line: number, account: kitAccountKey(account), delta, ms: at.wall })
  return [line(0, from, -count), line(1, to, count)]
}

/** Kits by account and by number. */
export const kitFolds = {
  'kits.moved': (entry) => kitTransfer(entry, entry.body.from, entry.body.to, entry.body.count),
  'kit.numbered': ({ at, body }) => [
    put('kit', { kit: body.kit, animal: body.animal, state: 'reserved', numbered_ms: at.wall }),
  ],
  'kit.opened': (entry) => [
    patch(
      'kit',
      { kit: entry.body.kit },
      {
        animal: entry.body.animal,
        state: 'opened',
        sampler: entry.body.sampler,
        opened_ms: entry.at.wall,
        opened_by: entry.by,
      },
    ),
    ...kitTransfer(entry, { in: 'hands', person: entry.body.sampler }, { in: 'used' }, 1),
  ],
  'kit.spoiled': (entry) => [
    patch('kit', { kit: entry.body.kit }, { state: 'spoiled' }),
    ...kitTransfer(entry, entry.body.from, { in: 'spoiled' }, 1),
  ],
} satisfies Partial<Folds>
