import { countItemKey } from '../../shared-types/close.ts'
import type { Folds } from './fold.ts'
import { put, remove } from './row-write.ts'

/** What people counted at dusk, how they explain the differences, and what they leave to be known. */
export const closeFolds = {
  'count.entered': ({ hash, desk, at, by, body }) => {
    const key = countItemKey(body.item)
    const { date, counted, bags } = body
    return [
      put('count', { desk, date, key, counted, bags: bags && JSON.stringify(bags) }),
      put('count_try', { hash, desk, date, key, counted, by, ms: at.wall }),
      // A reason was given for what was counted before, and for nothing else.
      remove('variance', { desk, date, key }),
    ]
  },
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
  'handover.written': ({ desk, at, by, body }) => [
    put('handover', { desk, date: body.date, words: body.words, by, ms: at.wall }),
  ],
} satisfies Partial<Folds>
