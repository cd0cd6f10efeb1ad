/**
 * Random numbers for simulating the line: made once from a seed, then the same for every question, so
 * that an answer changes only when the line does. Each column holds every stratum of the distribution
 * once, in an order of its own (Latin hypercube sampling: McKay, Beckman & Conover, Technometrics 21(2),
 * 1979), so that few replications give steady percentiles.
 */
import mt19937 from '@stdlib/random-base-mt19937'
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'

/** Replications of the line. A byte names each. */
export const replications = 256
const columns = 1024

export interface Draws {
  /** Strata, column by column: `order[column * replications + replication]`. */
  readonly order: Uint8Array
  /** The middle of each stratum of the even, the normal and the exponential distribution. */
  readonly even: Float64Array
  readonly normal: Float64Array
  readonly exponential: Float64Array
}

/** Where in a column a draw of a replication stands. */
export function drawAt(draws: Draws, column: number, replication: number): number {
  return draws.order[(column % columns) * replications + replication] ?? 0
}

/** The draws of a seed: a whole number from 1. */
export function drawsOf(seed: number): Draws {
  const next = mt19937.factory({ seed })
  const random = () => next() / 2 ** 32
  const order = new Uint8Array(columns * replications)
  for (let column = 0; column < columns; column += 1) shuffleColumn(order, column, random)
  const even = Float64Array.from({ length: replications }, (_, at) => (at + 0.5) / replications)
  return {
    order,
    even,
    normal: even.map((share) => normalQuantile(share, 0, 1)),
    exponential: even.map((share) => -Math.log(1 - share)),
  }
}

/** Fisher and Yates, as in Knuth, TAOCP vol. 2, 3.4.2, algorithm P. */
function shuffleColumn(order: Uint8Array, column: number, random: () => number): void {
  const start = column * replications
  for (let place = 0; place < replications; place += 1) {
    const other = Math.floor(random() * (place + 1))
    order[start + place] = order[start + other] ?? 0
    order[start + other] = place
  }
}
