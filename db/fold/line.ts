import type { Folds } from './fold.ts'
import { put } from './row-write.ts'

/** What hunters were told, what leads set aside, and the air at the line. */
export const lineFolds = {
  'wait.told': ({ at, body }) => [
    put('told', {
      animal: body.animal,
      low: body.lowMinutes,
      high: body.highMinutes,
      chance: body.chance,
      ms: at.wall,
    }),
  ],
  'suggestion.overridden': ({ at, body }) => {
    const pair = { animal: body.animal, sampler: body.sampler }
    // Somebody who was given another animal instead may still be offered this one next time.
    return body.instead === null ? [put('set_aside', { ...pair, ms: at.wall })] : []
  },
  'air.read': ({ desk, at, body }) => [put('air', { desk, celsius: body.celsius, ms: at.wall })],
} satisfies Partial<Folds>
