import type { Folds } from './fold.ts'
import { put } from './row-write.ts'

/** What the office says of the units: the plan of a desk as a whole, an outline for each unit. */
export const coverageFolds = {
  'coverage.planned': ({ desk, at, body }) => [
    put('coverage_plan', { desk, plan: JSON.stringify(body.plan), ms: at.wall }),
  ],
  'outline.supplied': ({ at, body }) => [
    put('unit_outline', {
      unit: body.unit,
      polygons: JSON.stringify(body.polygons),
      file: body.file,
      ms: at.wall,
    }),
  ],
} satisfies Partial<Folds>
