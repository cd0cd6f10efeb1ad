/** What became of every label printed: used, void, still to be used, or nobody knows. */
import type { LabelAccount } from '../../shared-types/views/close.ts'

interface Fates {
  /** Printed, neither used nor void. */
  readonly printed: number
  readonly used: number
  readonly void: number
}

/** `counted`: the unused labels that a person found; those that are short are unaccounted for. */
export function labelAccount(fates: Fates, counted: number): LabelAccount {
  const found = Math.min(counted, fates.printed)
  return {
    printed: fates.printed + fates.used + fates.void,
    used: fates.used,
    void: fates.void,
    unused: found,
    unaccounted: fates.printed - found,
  }
}
