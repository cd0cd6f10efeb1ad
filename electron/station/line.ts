/** The line: who waits, who works whom, and what a lead may move. */
import type { AnimalRecord } from '../../shared-types/animal.ts'
import { animalStateWords } from '../../shared-types/animal.ts'
import { draft, type EntryDraft } from '../../shared-types/entry.ts'
import type { PersonRecord } from '../../shared-types/person.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import { grouped } from '../../shared-types/sample-number.ts'
import { takesSamples, trainingLacked } from './training.ts'

/** First come, first worked. Numbers are given in that order, whatever the laptop's clock did. */
export function orderLine(a: AnimalRecord, b: AnimalRecord): number {
  return a.animal < b.animal ? -1 : 1
}

/** Whether a person is here to take samples now. */
export function isOnTheLine(person: PersonRecord): boolean {
  return takesSamples(person) && person.duty === 'on'
}

/** Those of the people on the line whose training fits a head. */
export function whoCanWork(
  onTheLine: readonly PersonRecord[],
  animal: Pick<AnimalRecord, 'facts'>,
): PersonRecord[] {
  return onTheLine.filter((person) => trainingLacked(person, animal.facts).length === 0)
}

function notInLine(animal: AnimalRecord): Result<never> {
  return refused(
    'animal-not-in-line',
    `Animal ${grouped(animal.animal)} is not in the line: it is ${animalStateWords[animal.state]}.`,
    'Choose an animal that is waiting or with a sampler.',
    'animal',
  )
}

export interface AssignView {
  readonly animal: AnimalRecord
  readonly sampler: PersonRecord
  /** The person giving the command. */
  readonly by: PersonRecord
}

/** Assigns or reassigns an animal. A sampler takes animals for themselves only; a lead for anyone. */
export function decideAssign(view: AssignView): Result<EntryDraft[]> {
  const { animal, sampler, by } = view
  if (animal.state !== 'waiting' && animal.state !== 'with-sampler') return notInLine(animal)
  if (by.role === 'sampler' && by.person !== sampler.person)
    return refused(
      'only-for-yourself',
      'A sampler may take animals for themselves only.',
      'Ask the station lead to assign animals to others.',
      'sampler',
    )
  if (!takesSamples(sampler))
    return refused(
      'not-a-sampler',
      `${sampler.name} does not take samples.`,
      'Choose a sampler with training, or give this person training on the station screen.',
      'sampler',
    )
  if (sampler.duty !== 'on')
    return refused(
      'not-on-duty',
      `${sampler.name} is ${sampler.duty === 'break' ? 'on a break' : 'off duty'}.`,
      'Choose someone on duty, or put this person on duty first.',
      'sampler',
    )
  const lacked = trainingLacked(sampler, animal.facts)
  if (lacked.length > 0)
    return refused(
      'not-trained',
      `${sampler.name} is not trained for ${lacked.join(' and ')}.`,
      'Choose a sampler who is, or let the head wait for one.',
      'sampler',
    )
  if (animal.state === 'with-sampler' && animal.sampler === sampler.person)
    return refused(
      'already-assigned',
      `Animal ${grouped(animal.animal)} is already with ${sampler.name}.`,
      'Nothing needs doing.',
    )
  return granted([draft('animal.assigned', { animal: animal.animal, sampler: sampler.person })])
}

/** Puts an animal back in the line, with its old place by arrival; also when its hunter comes back. */
export function decidePutBack(
  animal: AnimalRecord,
  sealedBags: number,
  reason: string,
): Result<EntryDraft[]> {
  if (animal.state !== 'with-sampler' && animal.state !== 'left')
    return refused(
      'animal-not-in-hand',
      `Animal ${grouped(animal.animal)} is ${animalStateWords[animal.state]}, so there is nothing to put back.`,
      'Choose an animal that is with a sampler, or one that left.',
      'animal',
    )
  if (sealedBags > 0)
    return refused(
      'bags-already-sealed',
      `${sealedBags} of its bags ${sealedBags === 1 ? 'is' : 'are'} already sealed.`,
      'Finish the animal instead, or discard the bags first.',
      'animal',
    )
  return granted([draft('animal.put-back', { animal: animal.animal, reason })])
}

/** The hunter leaves with the animal unsampled. */
export function decideLeave(
  animal: AnimalRecord,
  sealedBags: number,
  reason: string,
): Result<EntryDraft[]> {
  if (animal.state !== 'waiting' && animal.state !== 'with-sampler') return notInLine(animal)
  if (sealedBags > 0)
    return refused(
      'bags-already-sealed',
      'Tissue of this animal is already in sealed bags.',
      'Finish the animal instead, so that the bags are not lost.',
      'animal',
    )
  return granted([draft('animal.left', { animal: animal.animal, reason })])
}
