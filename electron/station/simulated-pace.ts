/** How long each sampler takes in one run of the simulation: a true pace drawn from what is believed. */
import normalCdf from '@stdlib/stats-base-dists-normal-cdf'
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { type Draws, drawAt } from './draws.ts'
import { type Pace, type WorkKind, workKinds } from './service-time.ts'

/**
 * A gamma variate of unit scale from a normal one. Source: Wilson & Hilferty, "The Distribution of
 * Chi-Square", Proceedings of the National Academy of Sciences 17(12), 1931.
 */
export function gammaNear(shape: number, normal: number): number {
  const root = 1 - 1 / (9 * shape) + normal / (3 * Math.sqrt(shape))
  return shape * Math.max(root, 0.01) ** 3
}

const kindCode = Object.fromEntries(workKinds.map((kind, code) => [kind, code])) as Record<
  WorkKind,
  number
>

/** Columns of the draws that paces use; the two of a sampler and kind stand side by side. */
const paceColumn = 41

export class SimulatedPaces {
  readonly #draws: Draws
  readonly #paces: readonly Pace[]
  /** Mean and deviation of the logarithm of minutes, by sampler and kind of work. */
  readonly #mean: Float64Array
  readonly #deviation: Float64Array
  #run = 0

  constructor(paces: readonly Pace[], draws: Draws) {
    this.#draws = draws
    this.#paces = paces
    this.#mean = new Float64Array(paces.length * workKinds.length)
    this.#deviation = new Float64Array(this.#mean.length)
  }

  /** Begins a run: everyone's true pace in it. */
  begin(run: number): void {
    this.#run = run
    this.#paces.forEach((pace, sampler) => {
      for (const kind of workKinds) this.#drawPace(this.#cell(sampler, kind), pace[kind])
    })
  }

  #drawPace(cell: number, { mean, weight, shape, scale }: Pace[WorkKind]): void {
    const column = paceColumn + 2 * cell
    const deviation = Math.sqrt(scale / gammaNear(shape, this.#normal(column)))
    this.#deviation[cell] = deviation
    this.#mean[cell] = mean + (deviation * this.#normal(column + 1)) / Math.sqrt(weight)
  }

  #cell(sampler: number, kind: WorkKind): number {
    return sampler * workKinds.length + kindCode[kind]
  }

  #normal(column: number): number {
    return this.#draws.normal[drawAt(this.#draws, column, this.#run)] ?? 0
  }

  /** Minutes of one piece of work, from a normal variate of its own. */
  minutes(sampler: number, kind: WorkKind, normal: number): number {
    const cell = this.#cell(sampler, kind)
    return Math.exp((this.#mean[cell] ?? 0) + (this.#deviation[cell] ?? 0) * normal)
  }

  /**
   * Minutes still to go of work that has already taken so long: the lognormal's upper part, at an even
   * variate's share of it.
   */
  minutesLeft(sampler: number, kind: WorkKind, since: number, even: number): number {
    const cell = this.#cell(sampler, kind)
    const [mean, deviation] = [this.#mean[cell] ?? 0, this.#deviation[cell] ?? 1]
    const past = normalCdf((Math.log(Math.max(since, 1e-6)) - mean) / deviation, 0, 1)
    const upper = past + (1 - past) * even
    // Beyond what was believed possible, nothing is known but that it may end any minute.
    if (upper > 1 - 1e-9) return 5 * even
    return Math.max(0, Math.exp(mean + deviation * normalQuantile(upper, 0, 1)) - since)
  }
}
