import { grouped } from '../../shared-types/sample-number.ts'
import type { AnimalView } from '../../shared-types/views/animal.ts'
import { useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Notice } from '../parts/notice.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import { BenchStep } from './bench-step.tsx'

/** The hunter does not agree any more: nothing is cut, and what was taken goes back or is discarded. */
export function Stopped({ animal }: { readonly animal: AnimalView }) {
  const { tell, busy, refusal } = useTell('animal.leave')
  const bags = animal.sites.filter(({ bag }) => bag !== null).length
  async function leave() {
    const answer = await tell({ animal: animal.animal, reason: 'does not agree to sampling' })
    if (!answer.ok) return sayRefused(answer.refusal)
    sayDone(`${grouped(animal.animal)} has left without a sample.`)
  }
  return (
    <BenchStep title="Stop: the hunter does not agree" refusal={refusal}>
      <Notice kind="warn">
        <p>
          The record says that the hunter does not agree to sampling any more. Put the knife down
          and give the head back.
        </p>
        {bags > 0 && (
          <p>
            {bags} {bags === 1 ? 'bag is' : 'bags are'} sealed: go to each side at the left and
            discard it first.
          </p>
        )}
      </Notice>
      <div className="row">
        <Button
          kind="main"
          keyHint="Alt+H"
          isDisabled={busy || bags > 0}
          why={bags > 0 ? 'discard the bags first' : 'being written'}
          onPress={() => void leave()}
        >
          The hunter has left
        </Button>
      </div>
    </BenchStep>
  )
}
