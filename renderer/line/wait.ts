/** How a wait looks beside the station's target: shape, words, and the length of its bar. */
import type { ShapeKind } from '../parts/shape.tsx'
import { formatMinutes } from '../parts/zoned-time.ts'

export interface WaitLook {
  readonly shape: ShapeKind
  readonly words: string
}

/** From three quarters of the target on a wait is 'soon'; the colour follows, the target is the lead's. */
const soonShare = 0.75

export function waitLook(minutes: number, target: number): WaitLook {
  if (minutes >= target) return { shape: 'now', words: `${formatMinutes(minutes - target)} over` }
  const left = formatMinutes(Math.ceil(target - minutes))
  return { shape: minutes >= target * soonShare ? 'soon' : 'fine', words: `${left} left` }
}

/** The minutes that a full bar stands for: the longest wait, and some room beyond the target. */
export function fullBarMinutes(longest: number, target: number): number {
  return Math.max(longest, target * 1.5)
}

/** A share of the full bar, 0 to 1. */
export function barShare(minutes: number, full: number): number {
  return Math.min(1, Math.max(0, minutes / full))
}
