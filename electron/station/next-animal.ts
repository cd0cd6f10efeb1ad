/** Who should work which animal next: the animals whose turn it is, each with whom it suits best. */
import type { PersonRecord } from '../../shared-types/person.ts'
import type { AnimalNumber, PersonId } from '../../shared-types/sample-number.ts'
import { type OrderView, type Waiting, whyItsTurn } from './line-order.ts'
import { cheapestMatching } from './matching.ts'
import { averageMinutesOf, type Pace, workKindOf } from './service-time.ts'
import { breadth, skillsOf, suffices } from './skills.ts'

/** A sampler with empty hands. */
export interface FreeSampler {
  readonly person: PersonRecord
  readonly pace: Pace
  readonly kits: number
  /** Minutes until the shift ends, or null when none is planned. */
  readonly minutesLeft: number | null
}

export interface Suggestion {
  readonly animal: AnimalNumber
  readonly sampler: PersonId
  /** One sentence that a lead can repeat to a hunter. */
  readonly why: string
}

/** A pair that a lead set aside. */
export interface SetAside {
  readonly animal: AnimalNumber
  readonly sampler: PersonId
}

/** One place in the line outweighs any number of minutes, so nobody jumps it for being quick work. */
const placeWorth = 100_000
/** A wider training is kept free for the heads that need it, unless it saves this many minutes. */
const breadthWorth = 2

/**
 * The cheapest matching of free samplers and animals waiting. Places in the line come first, so the
 * animals taken are those that would be called one by one; who takes which is settled by minutes.
 *
 * @param line in the order in which it should be worked.
 */
export function suggestNext(
  line: readonly Waiting[],
  free: readonly FreeSampler[],
  setAside: readonly SetAside[],
  view: OrderView,
): Suggestion[] {
  const able = free.filter(({ kits }) => kits > 0)
  const costs = able.map((sampler) =>
    line.map((waiting, place) => costOf(waiting, place, sampler, setAside)),
  )
  const firstCome = line.reduce<Waiting | undefined>(
    (first, each) => (first && first.animal.arrivedMs <= each.animal.arrivedMs ? first : each),
    undefined,
  )
  return cheapestMatching(costs).flatMap((place, at) => {
    const [sampler, waiting] = [able[at], line[place ?? -1]]
    if (!sampler || !waiting) return []
    const turn = whyItsTurn(waiting, view, waiting === firstCome)
    const why = `${turn.charAt(0).toUpperCase()}${turn.slice(1)}; ${whyThem(waiting, sampler, able)}.`
    return [{ animal: waiting.animal.animal, sampler: sampler.person.person, why }]
  })
}

function costOf(
  { animal, needs }: Waiting,
  place: number,
  { person, pace, minutesLeft }: FreeSampler,
  setAside: readonly SetAside[],
): number {
  const skills = skillsOf(person)
  const minutes = averageMinutesOf(pace[workKindOf(animal.facts)])
  const isAside = setAside.some(
    (pair) => pair.animal === animal.animal && pair.sampler === person.person,
  )
  if (isAside || !suffices(skills, needs)) return Infinity
  // Nobody is given an animal in the last minutes of a shift that they would not finish in it.
  if (minutesLeft !== null && minutesLeft < minutes && minutesLeft > -overtime) return Infinity
  return place * placeWorth + minutes + breadthWorth * (breadth(skills) - breadth(needs))
}

/** Who is still on duty this long after their shift has decided to stay on. */
const overtime = 10

/** Why this sampler of all those who are free. */
function whyThem(
  { animal, needs }: Waiting,
  chosen: FreeSampler,
  free: readonly FreeSampler[],
): string {
  const { name } = chosen.person
  const others = free.filter((each) => each !== chosen && suffices(skillsOf(each.person), needs))
  if (others.length === 0)
    return free.length === 1
      ? `${name} is free and trained for it`
      : `of those free, only ${name} is trained for it`
  const kind = workKindOf(animal.facts)
  const minutes = ({ pace }: FreeSampler) => averageMinutesOf(pace[kind])
  if (others.every((other) => minutes(other) >= minutes(chosen) + 0.5))
    return `${name} is free and takes about ${Math.round(minutes(chosen))} minutes, the least of those free`
  if (others.every((other) => breadth(skillsOf(other.person)) > breadth(skillsOf(chosen.person))))
    return `${name} is free, which leaves wider training for other heads`
  return `${name} is free and trained for it`
}
