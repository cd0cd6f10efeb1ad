import type { BagView } from '../../shared-types/views/coolers.ts'

/** A list longer than this is cut until somebody asks for all of it: it must keep pace with a scanner. */
const shownAtFirst = 40

/** Bags in the order in which their tissue ages, and how many of them are not shown yet. */
export function oldestFirst(
  bags: readonly BagView[],
  isAllShown: boolean,
): { readonly shown: readonly BagView[]; readonly more: number } {
  const inOrder = bags.toSorted((a, b) => a.sealedMs - b.sealedMs)
  const shown = isAllShown ? inOrder : inOrder.slice(0, shownAtFirst)
  return { shown, more: inOrder.length - shown.length }
}
