/** Kits for another day like this one. */
import type { LineSettings } from '../../shared-types/line.ts'
import type { KitsTomorrow } from '../../shared-types/views/close.ts'
import { learnDay, priorOfDay, stillToCome } from './arrivals.ts'
import { shareOf, stockFor } from './demand.ts'
import { enoughShare } from './kit-run-out.ts'

export interface DayBehind {
  /** Animals that came, and of these how many were to be sampled. */
  readonly came: number
  readonly joined: number
  /** Kits in stock and in hands. */
  readonly kitsHere: number
}

/**
 * The kits that 95 of 100 such days need: what was expected, put right by what came today, as the
 * forecast of the day itself does (`arrivals.ts`, `demand.ts`).
 */
export function kitsTomorrow(
  settings: LineSettings,
  { came, joined, kitsHere }: DayBehind,
): KitsTomorrow {
  const day = stillToCome(learnDay(priorOfDay(settings), came, 1), 1)
  const share = came === 0 ? 1 : joined / came
  const enough = stockFor(shareOf(day, share), enoughShare)
  return {
    animals: Math.round(day.mean),
    needKit: Math.round(100 * share),
    enough,
    here: kitsHere,
    ask: Math.max(0, enough - kitsHere),
  }
}
