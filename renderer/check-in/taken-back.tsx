import type { AnimalNumber } from '../../shared-types/sample-number.ts'
import { Button } from '../parts/button.tsx'
import { Notice } from '../parts/notice.tsx'
import { NumberText } from '../parts/number-text.tsx'

/** The check-in was a slip and is undone: what was typed can be put right and checked in again. */
export function TakenBack(props: {
  animal: AnimalNumber
  onCorrect: () => void
  onNext: () => void
}) {
  return (
    <section className="checked-in" aria-labelledby="taken-back-head" data-keys>
      <h2 id="taken-back-head">Check-in taken back</h2>
      <Notice kind="warn">
        <strong>
          <NumberText number={props.animal} /> is not checked in any more.
        </strong>{' '}
        It is out of the line, its number is not used again, and its tag is free to be checked in.
      </Notice>
      <div className="row">
        <Button kind="main" keyHint="Enter" autoFocus onPress={props.onCorrect}>
          Correct what was typed
        </Button>
        <Button keyHint="Alt+B" onPress={props.onNext}>
          Begin another animal
        </Button>
      </div>
    </section>
  )
}
