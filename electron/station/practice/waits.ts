/** What hunters hear about their wait, and what a lead decides against the desk's suggestion. */
import type { PersonId } from '../../../shared-types/sample-number.ts'
import type { Process } from './agenda.ts'
import type { Floor } from './floor.ts'

/** Every other hunter asks how long it takes, and hears what the desk expects. */
export function* tellWaits(floor: Floor): Process {
  for (const { animal, arrives } of floor.guests) {
    // Once the animal is checked in, and before anyone can have taken it.
    yield arrives + 0.2 - floor.agenda.now
    if (!floor.chance.happens(0.5)) continue
    const [atMs, by] = [floor.msAt(floor.agenda.now), floor.helper()]
    floor.steps.push({ is: 'told', atMs, by, name: 'wait.tell', input: { animal }, perhaps: true })
  }
}

/** The lead does something else than what is suggested now. */
export function setSuggestionAside(floor: Floor, by: PersonId): void {
  floor.steps.push({ is: 'suggestion-set-aside', atMs: floor.msAt(floor.agenda.now), by })
}
