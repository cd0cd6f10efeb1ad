import type { AnimalNumber } from '../../shared-types/sample-number.ts'
import { go } from '../desk/place.ts'
import { Button } from '../parts/button.tsx'
import { Notice } from '../parts/notice.tsx'
import { NumberText } from '../parts/number-text.tsx'

/** The most numbers shown; the first is one press away. */
const mostShown = 6

/** Animals whose place of harvest the laboratory cannot use: it can still be asked for tonight. */
export function PlacesMissing({ animals }: { animals: readonly AnimalNumber[] }) {
  const [first] = animals
  if (first === undefined) return null
  const more = animals.length - mostShown
  return (
    <Notice kind="warn">
      <p>
        {animals.length} {animals.length === 1 ? 'animal has' : 'animals have'} no place of harvest
        that the laboratory can use, and such samples are commonly not tested. Ask the hunters, and
        correct the animals.
      </p>
      <p>
        {animals.slice(0, mostShown).map((animal) => (
          <span key={animal}>
            <NumberText number={animal} />{' '}
          </span>
        ))}
        {more > 0 && `and ${more} more`}
      </p>
      <Button keyHint="Alt+0" onPress={() => go('line', first)}>
        Look at the first
      </Button>
    </Notice>
  )
}
