/**
 * Whose turn it is: the more urgent first, then first come, and nobody overtaken too often. The desk's
 * order, its suggestions and its simulation all work the line by this one rule.
 *
 * 1. A sampler takes the first to come of the most urgent rank that they can work.
 * 2. An animal so passed over, that the sampler could have worked, is overtaken once more.
 * 3. One overtaken as often as is allowed goes before all that came later, whatever their rank.
 * So nobody is overtaken more often than is allowed by animals that went to somebody who could have
 * worked them.
 */
import { suffices } from './skills.ts'

/** 0: tissue that is spoiling; 1: what goes first by the programme; 2: the rest. */
export type Rank = 0 | 1 | 2

/** Animals waiting in the order in which they came, as a linked list over their places. */
export class Turns {
  readonly #mostOvertaken: number
  /** The one waiting after each; slot 0 is the head of the list, animal `place` has slot `place + 1`. */
  readonly #next: Int32Array
  readonly #rank: Uint8Array
  readonly #needs: Uint8Array
  readonly #overtaken: Uint16Array
  readonly #waiting = new Int32Array(3)
  #last = 0

  constructor(capacity: number, mostOvertaken: number) {
    this.#mostOvertaken = mostOvertaken
    this.#next = new Int32Array(capacity + 1)
    this.#rank = new Uint8Array(capacity + 1)
    this.#needs = new Uint8Array(capacity + 1)
    this.#overtaken = new Uint16Array(capacity + 1)
  }

  /** Empties the line, to work it once more. */
  clear(): void {
    this.#next[0] = 0
    this.#last = 0
    this.#waiting.fill(0)
  }

  /** The animal at this place of the arrivals joins; animals join in the order in which they came. */
  join(place: number, rank: Rank, needs: number, overtaken: number): void {
    const at = place + 1
    this.#rank[at] = rank
    this.#needs[at] = needs
    this.#overtaken[at] = overtaken
    this.#next[at] = 0
    this.#next[this.#last] = at
    this.#last = at
    this.#waiting[rank] = (this.#waiting[rank] ?? 0) + 1
  }

  /** Takes the one whose turn it is with somebody of these skills out of the line; -1 when there is none. */
  take(skills: number): number {
    const before = this.#beforeChosen(skills)
    if (before < 0) return -1
    const chosen = this.#next[before] ?? 0
    this.#passOver(chosen, skills)
    this.#next[before] = this.#next[chosen] ?? 0
    if (chosen === this.#last) this.#last = before
    const rank = this.#rank[chosen] ?? 0
    this.#waiting[rank] = (this.#waiting[rank] ?? 0) - 1
    return chosen - 1
  }

  #beforeChosen(skills: number): number {
    const mostUrgent = this.#waiting[0] ? 0 : this.#waiting[1] ? 1 : 2
    let [found, foundRank] = [-1, 3]
    for (let before = 0, at = this.#next[0] ?? 0; at > 0; before = at, at = this.#next[at] ?? 0) {
      if (!suffices(skills, this.#needs[at] ?? 0)) continue
      const rank = this.#rank[at] ?? 2
      if (rank < foundRank) [found, foundRank] = [before, rank]
      // Nobody who came later may go before one that has been overtaken enough.
      const enough = (this.#overtaken[at] ?? 0) >= this.#mostOvertaken
      if (enough || foundRank === mostUrgent) return found
    }
    return found
  }

  #passOver(chosen: number, skills: number): void {
    for (let at = this.#next[0] ?? 0; at !== chosen; at = this.#next[at] ?? 0)
      if (suffices(skills, this.#needs[at] ?? 0))
        this.#overtaken[at] = (this.#overtaken[at] ?? 0) + 1
  }
}
