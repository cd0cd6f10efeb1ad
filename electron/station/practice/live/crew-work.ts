/**
 * The simulated crew of a live morning. At each step everyone looks at the desk and does what is next:
 * they react to what the learner did, right or wrong, and never do the learner's own work.
 */
import type { AnimalRecord } from '../../../../shared-types/animal.ts'
import { kitAccountKey } from '../../../../shared-types/kit.ts'
import type { AnimalNumber, KitNumber, PersonId } from '../../../../shared-types/sample-number.ts'
import { trainingLacked } from '../../training.ts'
import { Chance } from '../random.ts'
import { practiceStock } from '../station-facts.ts'
import { type Job, jobOf } from './job.ts'
import { guestsByAnimal } from './match.ts'
import type { Deed, Seen } from './seen.ts'
import type { LiveStage } from './stage.ts'

const minuteMs = 60_000
const firstPause = 1.2
/** A stream of chance of its own. */
const stream = 600

export class CrewWork {
  readonly #stage: LiveStage
  readonly #chance: Chance
  readonly #jobs = new Map<AnimalNumber, Job>()
  readonly #freeFromMs = new Map<PersonId, number>()
  readonly #givenOut = new Set<string>()
  #windowFreeMs: number
  #served = 0
  #carryMs: number
  #printMs = 0

  constructor(stage: LiveStage) {
    this.#stage = stage
    this.#chance = new Chance(stage.script.seed, stream)
    this.#windowFreeMs = stage.startMs
    this.#carryMs = stage.startMs + 12 * minuteMs
  }

  /** What the crew does now. Each deed is told once. */
  step(seen: Seen): Deed[] {
    const isLead = this.#stage.role === 'lead'
    return [
      ...(this.#stage.role === 'check-in' ? [] : this.#checkIns(seen)),
      ...this.#reserve(seen),
      ...(isLead ? [] : this.#kits(seen)),
      ...(isLead ? [] : this.#assignments(seen)),
      ...this.#benchWork(seen),
      ...this.#carried(seen),
    ]
  }

  /** The desk refused it: whoever did it looks again from where things stand. */
  refused({ input }: Deed): void {
    const { animal } = input as { animal?: AnimalNumber }
    if (animal) this.#jobs.delete(animal)
  }

  *#checkIns({ nowMs }: Seen): Generator<Deed> {
    const { guests, cast } = this.#stage
    for (let guest = guests[this.#served]; guest; guest = guests[this.#served]) {
      const atMs =
        Math.max(guest.arrivesMs, this.#windowFreeMs) + this.#chance.between(0.8, 1.6) * minuteMs
      if (atMs > nowMs) return
      this.#windowFreeMs = Math.max(guest.arrivesMs, this.#windowFreeMs) + minuteMs
      this.#served += 1
      const { facts, contact } = guest.plan
      yield { by: cast.host, name: 'animal.checkIn', input: { facts, contact } }
    }
  }

  *#reserve({ reserved, nowMs }: Seen): Generator<Deed> {
    if (reserved.length >= 5 || nowMs < this.#printMs) return
    this.#printMs = nowMs + 5 * minuteMs
    const wanted = { whom: 'reserve', count: 8 } as const
    const input = { for: wanted, stock: practiceStock }
    yield { by: this.#stage.cast.carrier, name: 'labels.printKits', input }
  }

  *#kits(seen: Seen): Generator<Deed> {
    const { trainee, carrier } = this.#stage.cast
    for (const { person } of samplersOf(seen)) {
      const to = { in: 'hands', person } as const
      if (person === trainee || seen.kitsAt(kitAccountKey(to)) > 1) continue
      const count = Math.min(6, seen.kitsAt('stock'))
      if (count < 1) return
      const input = { from: { in: 'stock' }, to, count, reason: '' } as const
      yield { by: carrier, name: 'kits.move', input }
    }
  }

  *#assignments(seen: Seen): Generator<Deed> {
    const taken = new Set<AnimalNumber>()
    for (const sampler of samplersOf(seen)) {
      const { person } = sampler
      if (handsFull(seen, person) || seen.nowMs < (this.#freeFromMs.get(person) ?? 0)) continue
      const next = seen.animals.find(
        ({ state, animal, facts }) =>
          state === 'waiting' && !taken.has(animal) && trainingLacked(sampler, facts).length === 0,
      )
      if (!next) continue
      taken.add(next.animal)
      const input = { animal: next.animal, sampler: person }
      yield { by: this.#stage.cast.lead, name: 'animal.assign', input }
    }
  }

  *#benchWork(seen: Seen): Generator<Deed> {
    const guestOf = guestsByAnimal(this.#stage.guests, seen.animals)
    for (const animal of seen.animals) {
      const { trainee } = this.#stage.cast
      if (animal.state !== 'with-sampler' || animal.sampler === trainee) {
        this.#jobs.delete(animal.animal)
        continue
      }
      yield* this.#workOn(animal, seen, guestOf(animal.animal)?.plan.tissues ?? [])
    }
  }

  *#workOn(
    { animal, sampler }: AnimalRecord,
    seen: Seen,
    tissues: Parameters<typeof jobOf>[0]['tissues'],
  ): Generator<Deed> {
    if (!sampler) return
    let job = this.#jobs.get(animal)
    if (!job || job.sampler !== sampler) {
      const kit = this.#kitFor(animal, sampler, seen)
      if (!kit) return
      job = jobOf({ animal, sampler, kit, tissues }, seen, this.#chance)
      this.#jobs.set(animal, job)
    }
    for (let [step] = job.steps; step && step.atMs <= seen.nowMs; [step] = job.steps) {
      job.steps.shift()
      if (step.name === 'animal.finish')
        this.#freeFromMs.set(sampler, seen.nowMs + firstPause * minuteMs)
      yield { by: step.by, name: step.name, input: step.input }
    }
  }

  /** The kit open on the animal or printed for it, else one that nobody has taken up; none without kits. */
  #kitFor(animal: AnimalNumber, sampler: PersonId, seen: Seen): KitNumber | null {
    const own = seen.kitOf(animal)
    if (own?.isOpen) return own.kit
    if (seen.kitsAt(kitAccountKey({ in: 'hands', person: sampler })) < 1) return null
    const kit = own?.kit ?? seen.reserved.find((each) => !this.#givenOut.has(each))
    if (!kit) return null
    this.#givenOut.add(kit)
    return kit
  }

  *#carried({ bench, coolers, nowMs }: Seen): Generator<Deed> {
    if (nowMs < this.#carryMs) return
    this.#carryMs = nowMs + this.#chance.between(9, 13) * minuteMs
    for (const { bag, isElk } of bench) {
      const cooler = coolers.find(
        ({ state, name }) => state === 'open' && name.startsWith(isElk ? 'Elk' : 'Deer'),
      )
      if (!cooler) continue
      const input = { bag, cooler: cooler.cooler }
      yield { by: this.#stage.cast.carrier, name: 'bag.place', input }
    }
  }
}

function samplersOf({ crew }: Seen) {
  return crew.filter(({ role, duty }) => role === 'sampler' && duty === 'on')
}

function handsFull({ animals }: Seen, person: PersonId): boolean {
  return animals.some(({ state, sampler }) => state === 'with-sampler' && sampler === person)
}
