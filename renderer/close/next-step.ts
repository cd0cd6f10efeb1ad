/** Where the close goes on after each Enter: count everything first, then explain, then sign. */
import type { CloseItem } from '../../shared-types/views/close.ts'

export type Step =
  | { readonly at: 'count'; readonly key: string }
  | { readonly at: 'explain'; readonly key: string }
  | { readonly at: 'sign' }

/** The step as a name, which marks its place on the screen. */
export function stepName(step: Step): string {
  return step.at === 'sign' ? 'sign' : `${step.at} ${step.key}`
}

/** A count that differs from the log, in number or in which bags there are. */
export function isOff({ variance, scanned }: CloseItem): boolean {
  const bags = scanned ? scanned.missing.length + scanned.extra.length : 0
  return (variance ?? 0) !== 0 || bags > 0
}

/** A count that differs and has no reason yet. */
export function isUnexplained(item: CloseItem): boolean {
  return isOff(item) && item.explained === null
}

/**
 * The step after the item `after`: the next thing nobody has counted, going round past the end of the
 * list; else the first variance without a reason; else the signature.
 */
export function nextStep(items: readonly CloseItem[], after?: string): Step {
  const from = items.findIndex(({ key }) => key === after) + 1
  const goingRound = [...items.slice(from), ...items.slice(0, from)]
  const uncounted = goingRound.find(({ key, counted }) => counted === null && key !== after)
  if (uncounted) return { at: 'count', key: uncounted.key }
  const unexplained = items.find(isUnexplained)
  return unexplained ? { at: 'explain', key: unexplained.key } : { at: 'sign' }
}
