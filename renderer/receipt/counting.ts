/** A counter-scan as it grows: what was found so far against the list. Pure. */
import type { BagNumber } from '../../shared-types/sample-number.ts'
import type { ReceivedBag } from '../../shared-types/receipt.ts'

export interface Count {
  readonly found: readonly ReceivedBag[]
}

export const nothingFound: Count = { found: [] }

export type Scanned =
  | { readonly is: 'good' | 'extra'; readonly count: Count }
  | { readonly is: 'twice'; readonly count: Count }

/** One more bag scanned: on the list, on no list, or counted before. */
export function scanned(count: Count, listed: ReadonlySet<string>, bag: BagNumber): Scanned {
  if (count.found.some((each) => each.bag === bag)) return { is: 'twice', count }
  const found = [...count.found, { bag, state: 'good' as const, words: '' }]
  return { is: listed.has(bag) ? 'good' : 'extra', count: { found } }
}

/** A bag that was found damaged, with what is wrong with it. */
export function damaged(count: Count, bag: BagNumber, words: string): Count {
  const state = words === '' ? ('good' as const) : ('damaged' as const)
  return { found: count.found.map((each) => (each.bag === bag ? { ...each, state, words } : each)) }
}

/** Bags of the list that were not found yet, and those found that are on no list. */
export function compared<L extends { readonly bag: BagNumber }>(
  count: Count,
  listed: readonly L[],
) {
  const found = new Set(count.found.map(({ bag }) => bag))
  const expected = new Set(listed.map(({ bag }) => bag))
  return {
    missing: listed.filter(({ bag }) => !found.has(bag)),
    extra: count.found.filter(({ bag }) => !expected.has(bag)),
  }
}
