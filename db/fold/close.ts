import { countItemKey } from '../../shared-types/close.ts'
import type { Folds } from './fold.ts'
import { put } from './row-write.ts'

/** What people counted at dusk and how they explain the differences. */
export const closeFolds = {
  'count.entered': ({ desk, at, body }) => [
    put('count', {
      desk,
      date: body.date,
      key: countItemKey(body.item),
      item: JSON.stringify(body.item),
      counted: body.counted,
      ms: at.wall,
    }),
  ],
  'variance.explained': ({ desk, body }) => [
    put('variance', {
      desk,
      date: body.date,
      key: countItemKey(body.item),
      expected: body.expected,
      counted: body.counted,
      reason: body.reason,
      words: body.words,
    }),
  ],
} satisfies Partial<Folds>
