import { useEffect, useState } from 'react'
import type { AnimalNumber } from '../../shared-types/sample-number.ts'
import { useTell } from '../desk/use-desk.ts'
import { rangeWords } from '../line/wait-words.ts'
import { RefusalNote } from '../parts/refusal-note.tsx'

/** How long the hunter is told it will be. What is shown here is what the log keeps as told. */
export function WaitTold(props: { animal: AnimalNumber }) {
  const { animal } = props
  const { tell, refusal } = useTell('wait.tell')
  const [told, setTold] = useState<{ lowMinutes: number; highMinutes: number }>()
  useEffect(() => {
    void tell({ animal }).then((answer) => answer.ok && setTold(answer.value))
  }, [animal, tell])
  return (
    <div role="status">
      {told && (
        <p className="line-place">
          Tell the hunter: a sampler takes it{' '}
          <b>{rangeWords({ low: told.lowMinutes, high: told.highMinutes })}</b> from now.
        </p>
      )}
      {/* Taken so soon that there is no wait left to tell. */}
      {refusal?.code !== 'animal-not-waiting' && <RefusalNote refusal={refusal} />}
    </div>
  )
}
