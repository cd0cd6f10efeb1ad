import { type SampleNumber, numberParts } from '../../shared-types/sample-number.ts'

const order = 'LRXKH'

/** Bags first, then the data card and the hunter's stub. */
export function orderLabel(a: { number: SampleNumber }, b: { number: SampleNumber }): number {
  return placeOf(a.number) - placeOf(b.number)
}

function placeOf(number: SampleNumber): number {
  return order.indexOf(numberParts(number).part)
}
