/** What a hunter says at the window: everything that a check-in asks for, and nothing else. */
import { type AnimalFacts, headFaultWords, speciesWords } from '../../../../shared-types/animal.ts'
import { fill } from '../../../../shared-types/fill.ts'
import { hunterWords as words } from './words.ts'

export function hunterSays(facts: AnimalFacts): string[] {
  const { hunter, tag, species, sex, age, harvested, head, consent } = facts
  const faults = head.faults.map((fault) => `, ${headFaultWords[fault]}`).join('')
  return [
    fill(words.tag, { tag, hunter }),
    fill(words.animal, {
      species: `a ${speciesWords[species]}`.replace('a elk', 'an elk'),
      sex: words.sex[sex],
      age: words.age[age],
      harvested,
    }),
    placeSaid(facts),
    fill(head.presented === 'carcass' ? words.carcass : words.headOnly, { faults }),
    words[consent],
  ]
}

function placeSaid({ place }: AnimalFacts): string {
  if (place.by === 'not-known') return words.notKnown
  if (place.by === 'unit') return fill(words.unit, place)
  return fill(words.coordinates, place)
}
