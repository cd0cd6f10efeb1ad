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
    put('label_run', {
      hash,
      blanks: body.blanks,
      by_hand: body.byHand ? 1 : 0,
      goes_on: body.goesOn?.run,
      goes_on_from: body.goesOn?.from,
      ms: at.wall,
    }),
    ...body.labels.map(({ number, copy }, place) =>
      put('label', {
        number,
        copy,
        kit: kitOfLabel(number),
        stock: body.stock,
        run: hash,
        place,
        printed_ms: at.wall,
      }),
    ),
  ],
  // What went on is told by the labels themselves.
  'labels.resumed': () => [],
  'stock.described': ({ body }) => [
    put('stock', { name: body.name, stock: JSON.stringify(body.stock), retired: 0 }),
  ],
  'stock.retired': ({ body }) => [
    put('stock', { name: body.name, stock: JSON.stringify(body.stock), retired: 1 }),
  ],
  'label.voided': ({ at, body }) => [
    patch(
      'label',
      { number: body.number, copy: body.copy },
      { void_reason: body.reason, void_ms: at.wall },
    ),
  ],
} satisfies Partial<Folds>
