import { type BagPart, numberParts } from '../../shared-types/sample-number.ts'
import type { TissueSite } from '../../shared-types/tissue.ts'
import type { Folds } from './fold.ts'
import { patch, put, remove } from './row-write.ts'

const siteOfPart: Record<BagPart, TissueSite> = { L: 'left', R: 'right', X: 'obex' }

/** What laboratories reported, what was settled about it, and what hunters were told. */
export const resultFolds = {
  'results.read': ({ hash, at, by, body }) => [
    put('result_file', {
      hash,
      laboratory: body.laboratory,
      file: body.file,
      digest: body.digest,
      reading: JSON.stringify(body.reading),
      rows: body.rows,
      taken: body.taken,
      known: body.known,
      skipped: body.skipped,
      doubts: body.doubts.length,
      ms: at.wall,
      by,
    }),
    // Read once more by another reading: what was in doubt by the first is asked anew.
    remove('row_doubt', { file: body.digest, settlement: null }),
    ...body.doubts.map(({ line, ...row }) =>
      put('row_doubt', {
        file: body.digest,
        line,
        laboratory: body.laboratory,
        file_name: body.file,
        ...row,
        words: '',
        ms: at.wall,
      }),
    ),
  ],
  'result.reported': ({ hash, at, by, body }) => [
    put('result', { ...body, hash, ms: at.wall, by }),
    put('sample_result', {
      bag: body.bag,
      animal: body.animal,
      site: siteOfPart[numberParts(body.bag).part as BagPart],
      word: body.word,
      method: body.method,
      tested: body.tested,
      laboratory: body.laboratory,
      hash,
      ms: at.wall,
    }),
  ],
  'results.row-settled': ({ at, by, body }) => [
    patch(
      'row_doubt',
      { file: body.file, line: body.line },
      {
        settlement: body.settlement,
        words: body.words,
        settled_by: by,
        settled_ms: at.wall,
      },
    ),
  ],
  'results.rules-set': ({ body }) => [
    put('result_rules', { one: 1, rules: JSON.stringify(body.rules) }),
  ],
  'result.followed-up': ({ hash, at, by, body }) => [
    put('follow_up', { ...body, hash, ms: at.wall, by }),
  ],
  'hunter.told': ({ hash, at, by, body }) => [
    put('hunter_told', { ...body, hash, ms: at.wall, by }),
  ],
} satisfies Partial<Folds>
