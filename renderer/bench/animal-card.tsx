import { ageWords, headFaultWords, speciesWords } from '../../shared-types/animal.ts'
import type { AnimalView } from '../../shared-types/views/animal.ts'
import { Badge } from '../parts/badge.tsx'
import { NumberText } from '../parts/number-text.tsx'
import { Ago } from '../parts/time.tsx'

/** The animal on the bench: its number to compare, and what the knife must know. */
export function AnimalCard({ animal }: { readonly animal: AnimalView }) {
  const { facts } = animal
  return (
    <section className="animal-card" aria-label="Animal on the bench">
      <p className="bench-number">
        <NumberText number={animal.animal} />
      </p>
      <p>
        {speciesWords[facts.species]}, {facts.sex === 'unknown' ? 'sex unknown' : facts.sex},{' '}
        {ageWords[facts.age]}
      </p>
      <p>
        Tag <span className="numbers">{facts.tag}</span>, here for <Ago ms={animal.arrivedMs} />
      </p>
      <ul className="row">
        <li>
          {facts.head.presented === 'carcass' ? 'Carcass' : 'Head only'}
          {facts.head.faults.length === 0 && ', head whole'}
        </li>
        {facts.head.faults.map((fault) => (
          <li key={fault}>
            <Badge shape="soon">{headFaultWords[fault]}</Badge>
          </li>
        ))}
      </ul>
      {animal.kitOpened && animal.kit && (
        <p>
          Kit <NumberText number={animal.kit} />
        </p>
      )}
    </section>
  )
}
