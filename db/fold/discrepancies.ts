import type { Folds } from './fold.ts'
import { put } from './row-write.ts'

/** How offices settled what the merged record could not. */
export const discrepancyFolds = {
  'discrepancy.settled': ({ hash, desk, by, at, body }) => [
    put('settlement', {
      ...body,
      hash,
      replaces: JSON.stringify(body.replaces),
      desk,
      by,
      ms: at.wall,
    }),
  ],
} satisfies Partial<Folds>
