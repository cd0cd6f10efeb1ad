import { numberParts, readSampleNumber } from '../../shared-types/sample-number.ts'

/** A badge, a cooler, a manifest or another animal is not for the step at hand: the window says what it is. */
export function isElsewhere(text: string): boolean {
  const read = readSampleNumber(text)
  return read.ok && ['P', 'C', 'M', 'A'].includes(numberParts(read.value).part)
}
