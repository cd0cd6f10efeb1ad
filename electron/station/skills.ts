/** Training as bits, so that a line can be worked through thousands of times. */
import type { AnimalFacts } from '../../shared-types/animal.ts'
import type { PersonRecord, Training } from '../../shared-types/person.ts'
import { trainingNeeded } from './training.ts'

const bit: Record<Training, number> = { deer: 1, 'elk-and-moose': 2, 'skinned-heads': 4 }
/** Of somebody who can work every head. */
export const everySkill = 7

const bitsOf = (trainings: readonly Training[]) =>
  trainings.reduce((bits, each) => bits | bit[each], 0)

export function skillsOf({ training }: Pick<PersonRecord, 'training'>): number {
  return bitsOf(training)
}

export function skillsNeeded(facts: Pick<AnimalFacts, 'species' | 'head'>): number {
  return bitsOf(trainingNeeded(facts))
}

/** Whether somebody with these skills can work a head that needs those. */
export function suffices(skills: number, needed: number): boolean {
  return (needed & ~skills) === 0
}

/** How many trainings somebody has. */
export function breadth(skills: number): number {
  return (skills & 1) + ((skills >> 1) & 1) + ((skills >> 2) & 1)
}
