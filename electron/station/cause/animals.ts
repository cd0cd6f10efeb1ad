/** Why animals are counted otherwise than checked in, and which are left with a sampler. */
import { grouped } from '../../../shared-types/sample-number.ts'
import type { Cause } from '../../../shared-types/views/cause.ts'
import type { Evidence, Variance } from '../likely-cause.ts'

/** One animal fewer than checked in: the same one may have been checked in twice. */
export function animalCauses({ item, off, evidence }: Variance): Cause[] {
  if (off >= 0) return []
  return evidence.twice.map(
    ({ tag, animal }): Cause => ({
      code: 'animal-checked-in-twice',
      about: animal,
      evidence: evidence.twice.length === -off ? 85 : 55,
      say: `Tag ${tag} was checked in twice; the second time as animal ${grouped(animal)}.`,
      next: 'Compare the two; if they are one animal, record that its hunter left.',
      look: { screen: 'line', number: animal },
      settle: {
        command: 'variance.explain',
        input: {
          item: item.item,
          reason: 'miscounted-during-day',
          words: `tag ${tag} was checked in twice`,
        },
      },
    }),
  )
}

/** An animal of which a bag is sealed does not go back to the line. */
const handOn = (bags: number) =>
  bags > 0 ? 'give it to another sampler' : 'put it back in the line'

/** Animals that a sampler took and nobody finished. */
export function animalsBetween({ withSampler }: Evidence): Cause[] {
  return withSampler.map(
    ({ animal, name, duty, since, bags, openSites }): Cause => ({
      code: 'animal-with-sampler',
      about: animal,
      evidence: duty === 'off' || bags > 0 ? 90 : 70,
      say: `Animal ${grouped(animal)} was left with ${name}, who took it at ${since}${bags > 0 ? ` and sealed ${bags} ${bags === 1 ? 'bag' : 'bags'} of it` : ''}${duty === 'off' ? ' and has gone off duty' : ''}.`,
      next:
        openSites === 0
          ? `If its work is done, finish it; else ${handOn(bags)}.`
          : `${openSites} of its tissues ${openSites === 1 ? 'is' : 'are'} neither bagged nor said to be missing: settle that on the bench, or ${handOn(bags)}.`,
      look: { screen: 'line', number: animal },
      settle: openSites === 0 ? { command: 'animal.finish', input: { animal } } : null,
    }),
  )
}
