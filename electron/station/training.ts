/** Training decides who can work which head. */
import type { AnimalFacts } from '../../shared-types/animal.ts'
import type { PersonRecord, Training } from '../../shared-types/person.ts'
import { trainingWords } from '../../shared-types/person.ts'

/** What a head asks for: the species' training, and skinned heads besides where the hide was wanted. */
export function trainingNeeded(facts: Pick<AnimalFacts, 'species' | 'head'>): Training[] {
  const big = facts.species === 'elk' || facts.species === 'moose'
  const needed: Training[] = [big ? 'elk-and-moose' : 'deer']
  if (facts.head.faults.includes('skinned')) needed.push('skinned-heads')
  return needed
}

/** What a person still lacks for a head, in words; empty when they can work it. */
export function trainingLacked(
  person: Pick<PersonRecord, 'training'>,
  facts: Pick<AnimalFacts, 'species' | 'head'>,
): string[] {
  return trainingNeeded(facts)
    .filter((each) => !person.training.includes(each))
    .map((each) => trainingWords[each])
}

/** Whether a person takes samples at all: samplers and leads with some training. */
export function takesSamples(person: PersonRecord): boolean {
  return (
    person.active &&
    (person.role === 'sampler' || person.role === 'lead') &&
    person.training.length > 0
  )
}
