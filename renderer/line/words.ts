/** An animal in a few words, as the crew calls it. */
import {
  type AnimalFacts,
  ageWords,
  headFaultWords,
  speciesWords,
} from '../../shared-types/animal.ts'
import { type AnimalNumber, numberParts } from '../../shared-types/sample-number.ts'

/** `A0042`: the part of the number that people call out. */
export function calledNumber(animal: AnimalNumber): string {
  const { desk, serial } = numberParts(animal)
  return `${desk.slice(-1)}${String(serial).padStart(4, '0')}`
}

type Kind = Pick<AnimalFacts, 'species' | 'sex' | 'age'>

/** `mule deer, adult male`. */
export function kindWords({ species, sex, age }: Kind): string {
  return `${speciesWords[species]}, ${ageWords[age]}${sex === 'unknown' ? '' : ` ${sex}`}`
}

/** `head only, skinned for the taxidermist`; empty for a whole carcass. */
export function headWords({ head }: Pick<AnimalFacts, 'head'>): string {
  const presented = head.presented === 'head-only' ? ['head only'] : []
  return [...presented, ...head.faults.map((fault) => headFaultWords[fault])].join(', ')
}
