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
export function heldWords(held: { told: number; held: number; expected: number }): string | null {
  if (held.told === 0) return null
  const share = (count: number) => Math.round((100 * count) / held.told)
  return `${held.held} of ${held.told} waits told have held (${share(held.held)} in 100; ${share(held.expected)} expected)`
}
