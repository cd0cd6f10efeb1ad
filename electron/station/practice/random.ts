/**
 * Chance that can be had again: the same seed always deals the same practice day.
 * Source: O'Neill, "PCG: A Family of Simple Fast Space-Efficient Statistically Good Algorithms for
 * Random Number Generation", Harvey Mudd College HMC-CS-2014-0905, 2014 (PCG-XSH-RR 64/32).
 */

const multiplier = 6364136223846793005n
const low64 = (1n << 64n) - 1n
const low32 = 0xffffffffn

/** Numbers of 32 bits, evenly spread. Streams of one seed have nothing to do with each other. */
export function pcg32(seed: bigint, stream: bigint): () => number {
  const increment = ((stream << 1n) | 1n) & low64
  let state = 0n
  const step = () => {
    const before = state
    state = (before * multiplier + increment) & low64
    return before
  }
  step()
  state = (state + seed) & low64
  step()
  return () => {
    const before = step()
    const mixed = Number((((before >> 18n) ^ before) >> 27n) & low32)
    const turn = Number(before >> 59n)
    return ((mixed >>> turn) | (mixed << (-turn & 31))) >>> 0
  }
}

/** What a made-up day asks of chance. */
export class Chance {
  readonly #next: () => number

  /** `stream` keeps one part of a day as it is when another part asks for more. */
  constructor(seed: number, stream: number) {
    this.#next = pcg32(BigInt(seed), BigInt(stream))
  }

  /** From 0 up to, not including, 1. */
  share(): number {
    return this.#next() / 2 ** 32
  }

  between(low: number, high: number): number {
    return low + (high - low) * this.share()
  }

  /** A whole number, both ends included. */
  whole(low: number, high: number): number {
    return low + Math.floor(this.share() * (high - low + 1))
  }

  happens(probability: number): boolean {
    return this.share() < probability
  }

  /** One of a list that is not empty. */
  oneOf<T>(list: readonly T[]): T {
    if (list.length === 0) throw new Error('nothing to choose from')
    return list[this.whole(0, list.length - 1)] as T
  }

  /** One of the outcomes, each as likely as its weight says. */
  weighted<T>(outcomes: readonly (readonly [outcome: T, weight: number])[]): T {
    let left = this.share() * outcomes.reduce((sum, [, weight]) => sum + weight, 0)
    const drawn = outcomes.find(([, weight]) => {
      left -= weight
      return left < 0
    })
    return drawn ? drawn[0] : this.oneOf(outcomes)[0]
  }

  /** The list in another order: Fisher and Yates, as in Knuth, TAOCP vol. 2, 3.4.2, algorithm P. */
  shuffled<T>(list: readonly T[]): T[] {
    const order = [...list]
    for (let last = order.length - 1; last > 0; last -= 1) {
      const other = this.whole(0, last)
      const [a, b] = [order[last] as T, order[other] as T]
      order[last] = b
      order[other] = a
    }
    return order
  }

  bytes(count: number): Uint8Array {
    return Uint8Array.from({ length: count }, () => this.whole(0, 255))
  }
}
