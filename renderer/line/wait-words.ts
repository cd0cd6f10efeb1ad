/** A forecast in the words a hunter hears. */
import type { MinutesRange } from '../../shared-types/views/forecast.ts'
import { formatMinutes } from '../parts/zoned-time.ts'

/** `5 to 12 min`, `under 5 min`, `2 h 05 min to 2 h 40 min`. */
export function rangeWords({ low, high }: Pick<MinutesRange, 'low' | 'high'>): string {
  if (high < 1) return 'at once'
  if (low < 1) return `within ${formatMinutes(high)}`
  if (low === high) return `about ${formatMinutes(high)}`
  return high < 120 ? `${low} to ${high} min` : `${formatMinutes(low)} to ${formatMinutes(high)}`
}

/** How well the waits told today have held; null before the first is over. */
export function heldWords({ told, held }: { told: number; held: number }): string | null {
  if (told === 0) return null
  return `${held} of ${told} waits told today have held: ${Math.round((100 * held) / told)} in 100, and 80 are meant to`
}
