import { type SampleNumber, kitOf, numberParts } from '../../shared-types/sample-number.ts'
import type { Folds } from './fold.ts'
import { patch, put } from './row-write.ts'

const kitParts = ['L', 'R', 'X', 'K', 'H']

function kitOfLabel(number: SampleNumber) {
  return kitParts.includes(numberParts(number).part) ? kitOf(number) : null
}

/** Printed copies. Whether one is in use follows from its kit and bag, so it is not stored. */
export const labelFolds = {
  'labels.printed': ({ hash, at, body }) => [
    put('label_run', { hash, blanks: body.blanks, ms: at.wall }),
    ...body.labels.map(({ number, copy }) =>
      put('label', {
        number,
        copy,
        kit: kitOfLabel(number),
        stock: body.stock,
        printed_ms: at.wall,
      }),
    ),
  ],
  'label.voided': ({ at, body }) => [
    patch(
      'label',
      { number: body.number, copy: body.copy },
      { void_reason: body.reason, void_ms: at.wall },
    ),
  ],
} satisfies Partial<Folds>
