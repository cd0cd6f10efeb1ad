/** Settling: which settlements of a discrepancy stand, and whether a new one may be made. */
import type { SettleChoice } from '../../../shared-types/discrepancy.ts'
import { draft, type EntryDraft } from '../../../shared-types/entry.ts'
import { granted, type Result, refused } from '../../../shared-types/result.ts'
import { type Discrepancy, waysOf } from './discrepancy.ts'
import { rulingOf } from './ruling.ts'

export interface Settlement {
  readonly hash: string
  readonly choice: SettleChoice
  readonly side: string | null
  readonly words: string
  readonly replaces: readonly string[]
}

/** Those that no other takes the place of. */
export function standing<S extends Settlement>(settlements: readonly S[]): S[] {
  const replaced = new Set(settlements.flatMap(({ replaces }) => replaces))
  return settlements.filter(({ hash }) => !replaced.has(hash))
}

export type SettledState = 'open' | 'settled' | 'settled-differently'

/** Whether the settlements that stand agree. The words beside them may differ. */
export function settledState(standing: readonly Settlement[]): SettledState {
  const decisions = new Set(standing.map(({ choice, side }) => `${choice} ${side ?? ''}`))
  return decisions.size === 0 ? 'open' : decisions.size === 1 ? 'settled' : 'settled-differently'
}

export interface Settling {
  readonly choice: SettleChoice
  readonly side: string | null
  readonly words: string
}

/** Refuses a way that is not offered for this kind, and `choose-a-side` where one is to be named. */
export function decideSettle(
  id: string,
  discrepancy: Discrepancy,
  before: readonly Settlement[],
  { choice, side, words }: Settling,
): Result<EntryDraft[]> {
  const way = waysOf(discrepancy.kind).find((each) => each.choice === choice)
  if (!way)
    return refused(
      'not-a-way-out',
      'This cannot be settled in that way.',
      'Choose one of the ways that are offered.',
      'choice',
    )
  if (way.namesSide && !discrepancy.sides.some(({ key }) => key === side))
    return refused(
      'choose-a-side',
      'It is not said which side holds.',
      'Choose the side that holds.',
      'side',
    )
  return granted([
    draft('discrepancy.settled', {
      discrepancy: id,
      kind: discrepancy.kind,
      choice,
      side: way.namesSide ? side : null,
      words,
      ruling: rulingOf(discrepancy, choice, side),
      replaces: standing(before).map(({ hash }) => hash),
    }),
  ])
}
