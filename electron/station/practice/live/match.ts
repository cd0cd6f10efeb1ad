/** Which hunter an animal of the log belongs to, even where the learner mistyped something. */
import type { AnimalRecord } from '../../../../shared-types/animal.ts'
import type { AnimalNumber } from '../../../../shared-types/sample-number.ts'
import type { GuestOf, LiveGuest } from './stage.ts'

/**
 * Each animal to the hunter with its tag, else with its hunter's number, else to whoever had stood at
 * the window longest when it was checked in. Struck-out check-ins are nobody's.
 */
export function guestsByAnimal(
  guests: readonly LiveGuest[],
  animals: readonly AnimalRecord[],
): GuestOf {
  const left = new Set(guests)
  const found = new Map<AnimalNumber, LiveGuest>()
  const take = (match: (guest: LiveGuest, animal: AnimalRecord) => boolean) => {
    for (const animal of animals) {
      if (found.has(animal.animal) || animal.state === 'struck-out') continue
      const guest = [...left].find((each) => match(each, animal))
      if (!guest) continue
      left.delete(guest)
      found.set(animal.animal, guest)
    }
  }
  take(({ plan }, { facts }) => plan.facts.tag === facts.tag)
  take(({ plan }, { facts }) => plan.facts.hunter === facts.hunter)
  take(({ arrivesMs }, animal) => arrivesMs <= animal.arrivedMs)
  return (animal) => found.get(animal)
}
