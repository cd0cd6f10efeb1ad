import { type Outcome, outcomeWords } from '../../shared-types/animal.ts'

/** The outcome as it is said aloud: `both sides taken`. */
export function outcomeSentence(outcome: Outcome): string {
  return outcome === 'none' ? 'no sample taken' : `${outcomeWords[outcome]} taken`
}
