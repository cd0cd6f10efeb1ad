/**
 * Results held back while a row of a laboratory's file about their animal is in doubt: what it settles to
 * may be a detection, and a hunter told "not detected" before would eat the meat. Detected is never held
 * back, for no other row can change it (`animalResult`) and whoever must not eat the meat is told at once.
 * Common practice, no source.
 */
import type { ResultWord } from '../../../shared-types/laboratory-result.ts'
import { type Refusal, type Result, refused } from '../../../shared-types/result.ts'
import { type AnimalNumber, grouped } from '../../../shared-types/sample-number.ts'

/** `openRows`: rows in doubt that name the animal or a bag of it and that nobody has settled. */
export function isHeldBack(word: ResultWord | null, openRows: number): boolean {
  return openRows > 0 && word !== 'detected'
}

/** What stands in the place of a result that is held back. */
export const heldBackWords = 'in doubt: being settled'

/** What a hunter at a counter is told of it, and where it is settled. */
export const heldBackTelling: Pick<Refusal, 'say' | 'next'> = {
  say: "In doubt: being settled. What the laboratory's file says of this animal is not certain yet, so no result can be told.",
  next: 'Wait for the result before eating the meat. Staff: settle it on the results screen (F11), 3 Rows in doubt.',
}

/** The refusal to tell a result that is held back. */
export function heldBack(animal: AnimalNumber): Result<never> {
  return refused(
    'result-in-doubt',
    `Animal ${grouped(animal)} is held back: a row of a laboratory's file about it is in doubt and waits to be settled.`,
    'Settle it on the results screen (F11), 3 Rows in doubt; then tell the hunter.',
    'animals',
  )
}
