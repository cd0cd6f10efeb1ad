import type { Outcome } from '../../shared-types/animal.ts'
import type { AnimalNumber } from '../../shared-types/sample-number.ts'
import { Button } from '../parts/button.tsx'
import { NumberText } from '../parts/number-text.tsx'
import { BenchStep } from './bench-step.tsx'
import { BleachCaution } from './cautions.tsx'
import { outcomeSentence } from './outcome.ts'
import { sentence } from './sentence.ts'

export interface FinishedAnimal {
  readonly animal: AnimalNumber
  readonly outcome: Outcome
}

/** The animal just finished, until the sampler goes on. */
export function Finished(props: { finished: FinishedAnimal; onGoOn: () => void }) {
  const { animal, outcome } = props.finished
  return (
    <BenchStep title={`${sentence(outcomeSentence(outcome))}`} focused>
      <p className="bench-number">
        <NumberText number={animal} />
      </p>
      <p className="bench-say">
        {outcome === 'none'
          ? 'The head goes back to the hunter.'
          : 'The bags go into a cooler now (F7). The hunter gets the stub.'}
      </p>
      <div className="row">
        <Button kind="main" keyHint="Enter" autoFocus onPress={props.onGoOn}>
          Go on
        </Button>
      </div>
      <BleachCaution />
    </BenchStep>
  )
}
