/**
 * The hybrid logical clock: wall time where it can be had, order always.
 * Source: Kulkarni, Demirbas, Madappa, Avva, Leone, "Logical Physical Clocks", OPODIS 2014, Fig. 5.
 */
import type { Stamp } from '../../shared-types/stamp.ts'

/** The stamp of a fact made here at `wallMs`, when the latest stamp known here is `last`. */
export function tick(last: Stamp, wallMs: number): Stamp {
  return wallMs > last.ms ? { ms: wallMs, n: 0 } : { ms: last.ms, n: last.n + 1 }
}

/** The stamp of the moment at `wallMs` in which a fact stamped `message` became known here. */
export function receive(last: Stamp, message: Stamp, wallMs: number): Stamp {
  const ms = Math.max(last.ms, message.ms, wallMs)
  const seen = [last, message].filter((stamp) => stamp.ms === ms).map((stamp) => stamp.n)
  return { ms, n: seen.length === 0 ? 0 : Math.max(...seen) + 1 }
}
