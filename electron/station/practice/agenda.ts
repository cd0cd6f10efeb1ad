/** What happens when: the processes of a made-up day, taken in turn by their next moment. */

/** Something that goes on over time. It yields the minutes it waits until its next step. */
export type Process = Generator<number, void, void>

interface Turn {
  readonly minute: number
  readonly process: Process
}

/**
 * Runs processes side by side on one clock. Two that are due at the same minute go in the order in
 * which they began to wait, so a day comes out the same every time.
 */
export class Agenda {
  readonly #turns: Turn[] = []
  #now = 0

  /** Minutes since the day began. */
  get now(): number {
    return this.#now
  }

  /** Starts a process; its first step comes at once, after whatever is already due now. */
  start(process: Process): void {
    this.#wait(0, process)
  }

  /** Runs until nothing is left to do, or to the end of this minute. */
  run(until = Number.POSITIVE_INFINITY): void {
    for (let turn = this.#turns[0]; turn && turn.minute <= until; turn = this.#turns[0]) {
      this.#turns.shift()
      this.#now = turn.minute
      const step = turn.process.next()
      if (!step.done) this.#wait(step.value, turn.process)
    }
  }

  #wait(minutes: number, process: Process): void {
    const minute = this.#now + Math.max(0, minutes)
    this.#turns.splice(this.#firstAfter(minute), 0, { minute, process })
  }

  #firstAfter(minute: number): number {
    let [low, high] = [0, this.#turns.length]
    while (low < high) {
      const middle = (low + high) >> 1
      if ((this.#turns[middle]?.minute ?? 0) <= minute) low = middle + 1
      else high = middle
    }
    return low
  }
}
