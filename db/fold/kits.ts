import type { Entry } from '../../shared-types/entry.ts'
import { type KitAccount, kitAccountKey } from '../../shared-types/kit.ts'
import type { Folds } from './fold.ts'
import { offer, patch, put, type RowWrite } from './row-write.ts'

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
  // Another desk may have told of the kit first, where its clock is behind.
  'kit.numbered': ({ at, body: { kit, animal } }) => [
    offer('kit', { kit, animal, state: 'reserved', numbered_ms: at.wall }),
    patch('kit', { kit }, { numbered_ms: at.wall }),
  ],
  'kit.brought': ({ at, body }) => [
    offer('kit', { kit: body.kit, animal: null, state: 'reserved', numbered_ms: at.wall }),
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
