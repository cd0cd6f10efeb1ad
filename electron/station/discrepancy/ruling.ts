/** What settling a discrepancy comes to in the record. */
import type { SettleChoice } from '../../../shared-types/discrepancy.ts'
import type { Ruling } from '../../../shared-types/ruling.ts'
import type { Discrepancy } from './discrepancy.ts'

/** Null where the settlement is only put on record. */
export function rulingOf(
  { sides }: Discrepancy,
  choice: SettleChoice,
  side: string | null,
): Ruling | null {
  const chosen = sides.find(({ key }) => key === side)?.holds ?? null
  const animals = sides.flatMap(({ holds }) => (holds?.is === 'one-animal' ? [holds.kept] : []))
  if (animals.length === 0) return choice === 'one-holds' ? chosen : null
  if (choice === 'same-animal') return chosen ?? sides[0]?.holds ?? null
  return { is: 'separate-animals', animals }
}
