/**
 * When an entry was made, by a hybrid logical clock: wall time that never runs backwards
 * within what a desk has seen, so causes always sort before effects.
 * Source: Kulkarni, Demirbas, Madappa, Avva, Leone, "Logical Physical Clocks", OPODIS 2014, Fig. 5.
 */
import { z } from 'zod'

/** `ms`: wall milliseconds since 1970-01-01 UTC, at least; `n`: counter among equal `ms`. */
export const Stamp = z.strictObject({
  ms: z.int().nonnegative(),
  n: z.int().nonnegative(),
})
export type Stamp = z.infer<typeof Stamp>

/**
 * The time of an entry. The stamp orders entries and never runs backwards; `wall` is what the
 * laptop's clock read, in milliseconds since 1970-01-01 UTC. Waits and hold clocks are counted by
 * `wall`: after a clock that was ahead is put right, the stamp stands still until time has caught up.
 */
export const EntryTime = Stamp.extend({ wall: z.int().nonnegative() })
export type EntryTime = z.infer<typeof EntryTime>

export const zeroStamp: Stamp = { ms: 0, n: 0 }

/** Order of stamps: wall time, then counter. */
export function orderStamp(a: Stamp, b: Stamp): number {
  return a.ms - b.ms || a.n - b.n
}
