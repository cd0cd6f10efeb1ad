/**
 * The line worked through many times by chance: this line, these people, these beliefs about how long
 * they take. Minutes count from now.
 */
import { type Draws, drawAt, replications } from './draws.ts'
import type { Pace, WorkKind } from './service-time.ts'
import { gammaNear, SimulatedPaces } from './simulated-pace.ts'
import { breadth, suffices } from './skills.ts'
import { type Rank, Turns } from './turn.ts'

/** What the line has to know of an animal. */
export interface SimulatedAnimal {
  readonly kind: WorkKind
  readonly needs: number
  readonly rank: Rank
}

/** An animal that is here. */
export interface AnimalHere extends SimulatedAnimal {
  readonly overtaken: number
  /** Minutes it has waited. */
  readonly waited: number
}

export interface SimulatedSampler {
  readonly skills: number
  readonly pace: Pace
  /** Here, or back, so many minutes from now. */
  readonly from: number
  /** Begins nothing more after so many minutes from now. */
  readonly until: number
  /** What is in hand, the one being worked first, and for how many minutes that has been. */
  readonly inHand: readonly WorkKind[]
  readonly since: number
}

/** Those still to come. */
export interface Coming {
  /** Shape and rate of the gamma belief about the animals of a whole day. */
  readonly shape: number
  readonly rate: number
  /** Share of the day's animals that has come by now, and minutes from now until a share has. */
  readonly shareNow: number
  readonly minutesUntil: (share: number) => number
  /** Each as likely: what an animal that comes is like. */
  readonly kinds: readonly SimulatedAnimal[]
}

export interface Scenario {
  /** In the order in which they came. */
  readonly here: readonly AnimalHere[]
  readonly samplers: readonly SimulatedSampler[]
  /** Null where nobody who comes later can matter. */
  readonly coming: Coming | null
  readonly overtakenAtMost: number
  /** Share of those in the line whose hunter drives off before their turn. */
  readonly leaving: number
  /** Whether those to come are followed too, to the end of the day. */
  readonly followComing: boolean
  /** At most `replications` of the draws. */
  readonly runs: number
}

/** An animal that came during a run. */
export interface CameLater {
  readonly arrived: number
  /** `Infinity` when nobody took it before everyone had gone. */
  wait: number
}

export interface Simulated {
  /** Whole minutes of wait of each animal here, run after run; `Infinity` where nobody took it. */
  readonly waits: readonly Float64Array[]
  /** Those that came, of all runs. */
  readonly later: readonly CameLater[]
}

export function simulateLine(scenario: Scenario, draws: Draws): Simulated {
  return new LineSimulation(scenario, draws).run()
}

/** Columns of the draws and what each is used for, from the first of them; paces have 40 to 299. */
const day = { from: 0, width: 1 }
const inHand = { from: 1, width: 39 }
const work = { from: 300, width: 200 }
const between = { from: 500, width: 200 }
const inHandBetween = { from: 700, width: 40 }
const inHandWork = { from: 740, width: 40 }
const gap = { from: 780, width: 120 }
const kindOfComer = { from: 900, width: 60 }
const leaves = { from: 960, width: 64 }

/** A day has fewer animals to come than this, or the settings are not about a check station. */
const mostToCome = 4000

class LineSimulation {
  readonly #of: Scenario
  readonly #draws: Draws
  readonly #turns: Turns
  readonly #samplers: readonly SimulatedSampler[]
  readonly #paces: SimulatedPaces
  readonly #freeAt: Float64Array
  readonly #isIdle: Uint8Array
  readonly #waits: readonly Float64Array[]
  readonly #later: CameLater[] = []
  /** Animals of this run in the order in which they came. */
  readonly #animals: SimulatedAnimal[]
  readonly #workable: number
  #run = 0
  #dayTotal = 0
  #share = 1
  #nextComes = Infinity

  constructor(of: Scenario, draws: Draws) {
    this.#of = of
    this.#draws = draws
    this.#turns = new Turns(of.here.length + (of.coming ? mostToCome : 0), of.overtakenAtMost)
    // Of two who are free, the one with the narrower training goes first.
    this.#samplers = of.samplers.toSorted((a, b) => breadth(a.skills) - breadth(b.skills))
    this.#paces = new SimulatedPaces(
      this.#samplers.map(({ pace }) => pace),
      draws,
    )
    this.#freeAt = new Float64Array(this.#samplers.length)
    this.#isIdle = new Uint8Array(this.#samplers.length)
    this.#waits = of.here.map(() => new Float64Array(of.runs).fill(Infinity))
    this.#animals = [...of.here]
    this.#workable = of.here.filter(({ needs }) =>
      of.samplers.some(({ skills }) => suffices(skills, needs)),
    ).length
  }

  run(): Simulated {
    for (this.#run = 0; this.#run < this.#of.runs; this.#run += 1) {
      this.#begin()
      this.#workThrough()
    }
    return { waits: this.#waits, later: this.#later }
  }

  /** A draw of this run. Where the columns are used up, they serve once more in another order. */
  #draw(of: Float64Array, { from, width }: typeof day, place: number): number {
    const again = Math.floor(place / width)
    const replication = (this.#run + 37 * again) % replications
    return of[drawAt(this.#draws, from + (place % width), replication)] ?? 0
  }

  #minutes(at: number, kind: WorkKind, columns: typeof day, place: number): number {
    return this.#paces.minutes(at, kind, this.#draw(this.#draws.normal, columns, place))
  }

  #begin(): void {
    const { here, coming } = this.#of
    this.#paces.begin(this.#run)
    this.#samplers.forEach((sampler, at) => {
      this.#freeAt[at] = this.#freeFrom(sampler, at)
      this.#isIdle[at] = sampler.inHand.length === 0 ? 1 : 0
    })
    this.#turns.clear()
    this.#animals.length = here.length
    here.forEach(({ rank, needs, overtaken }, place) => {
      this.#turns.join(place, rank, needs, overtaken)
    })
    this.#nextComes = Infinity
    if (!coming) return
    const total = gammaNear(coming.shape, this.#draw(this.#draws.normal, day, 0))
    this.#dayTotal = Math.max(total / coming.rate, 1e-6)
    this.#share = coming.shareNow
    this.#expectNext()
  }

  #freeFrom({ from, inHand: held, since }: SimulatedSampler, at: number): number {
    const minutes = held.map((kind, place) => {
      if (place === 0) {
        const even = this.#draw(this.#draws.even, inHand, at)
        return this.#paces.minutesLeft(at, kind, since, even)
      }
      const own = 7 * at + place
      return (
        this.#minutes(at, 'between', inHandBetween, own) + this.#minutes(at, kind, inHandWork, own)
      )
    })
    return Math.max(
      from,
      minutes.reduce((sum, each) => sum + each, 0),
    )
  }

  /** When the next one comes: arrivals by chance at the rate of this run's day. */
  #expectNext(): void {
    const { coming, here } = this.#of
    const place = this.#animals.length - here.length
    if (!coming || place >= mostToCome) {
      this.#nextComes = Infinity
      return
    }
    this.#share += this.#draw(this.#draws.exponential, gap, place) / this.#dayTotal
    this.#nextComes = this.#share < 1 ? coming.minutesUntil(this.#share) : Infinity
  }

  #comes(): void {
    const kinds = this.#of.coming?.kinds ?? []
    const place = this.#animals.length
    const share = this.#draw(this.#draws.even, kindOfComer, place)
    const animal = kinds[Math.floor(share * kinds.length)]
    if (animal) {
      this.#animals.push(animal)
      this.#turns.join(place, animal.rank, animal.needs, 0)
      if (this.#of.followComing) this.#later.push({ arrived: this.#nextComes, wait: Infinity })
    }
    this.#expectNext()
  }

  #workThrough(): void {
    const laterBefore = this.#later.length - this.#of.here.length
    let left = this.#workable
    while (left > 0 || this.#of.followComing) {
      const at = this.#firstFree()
      const now = this.#freeAt[at] ?? Infinity
      const sampler = this.#samplers[at]
      if (!sampler || now === Infinity) return
      while (this.#nextComes <= now) this.#comes()
      const place = now > sampler.until ? null : this.#turns.take(sampler.skills)
      if (place === null || place < 0) {
        // Goes home, or waits for whoever comes next.
        this.#freeAt[at] = place === null ? Infinity : this.#nextComes
        this.#isIdle[at] = 1
        continue
      }
      this.#take(place, at, now, laterBefore)
      if (place < this.#of.here.length) left -= 1
    }
  }

  #firstFree(): number {
    let first = 0
    for (let at = 1; at < this.#freeAt.length; at += 1)
      if ((this.#freeAt[at] ?? 0) < (this.#freeAt[first] ?? 0)) first = at
    return first
  }

  /** From being free to having the animal in hand takes its time: that is still wait. */
  #take(place: number, at: number, now: number, laterBefore: number): void {
    const animal = this.#animals[place]
    if (!animal) return
    const call = this.#isIdle[at] ? 'calling' : 'between'
    const begun = now + this.#minutes(at, call, between, place)
    this.#isIdle[at] = 0
    const isGone = this.#draw(this.#draws.even, leaves, place) < this.#of.leaving
    // Of one who has gone the wait is still what it would have been, but it takes nobody's time.
    this.#freeAt[at] = isGone ? now : begun + this.#minutes(at, animal.kind, work, place)
    const [here, waits] = [this.#of.here[place], this.#waits[place]]
    if (here && waits) waits[this.#run] = begun + here.waited
    const came = this.#of.followComing ? this.#later[laterBefore + place] : undefined
    if (came && !here) came.wait = begun - came.arrived
  }
}
