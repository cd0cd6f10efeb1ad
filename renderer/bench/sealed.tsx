import { type FormEvent, useState } from 'react'
import type { BagNumber } from '../../shared-types/sample-number.ts'
import { siteWords } from '../../shared-types/tissue.ts'
import type { SiteView } from '../../shared-types/views/animal.ts'
import { useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { NumberText } from '../parts/number-text.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import { BenchStep } from './bench-step.tsx'
import { sentence } from './sentence.ts'

/** A site that is done: its bag, and the way to discard it when it is torn or wrong. */
export function Sealed(props: { site: SiteView; bag: BagNumber; onDone: () => void }) {
  const { site, bag } = props
  const [reason, setReason] = useState('')
  const { tell, busy, refusal } = useTell('bag.discard')
  async function discard() {
    const answer = await tell({ bag, reason })
    if (!answer.ok) return sayRefused(answer.refusal)
    sayDone(`The bag of the ${siteWords[site.site]} is discarded.`)
    props.onDone()
  }
  function submit(event: FormEvent) {
    event.preventDefault()
    if (!busy) void discard()
  }
  return (
    <BenchStep title={`${sentence(siteWords[site.site])}: sealed in its bag`} focused>
      <p className="bench-number">
        <NumberText number={bag} />
      </p>
      <form className="stack" onSubmit={submit}>
        <TextEntry
          label="If it is torn, dropped or wrong: why is it discarded?"
          hint="Its label is void with it; reprint one on the kits screen (F6) for the new bag."
          value={reason}
          onChange={setReason}
          maxLength={200}
          error={refusal?.say}
          autoFocus
        />
        <div className="row">
          <Button kind="danger" type="submit" isDisabled={reason.trim() === ''} why="say why first">
            Discard this bag
          </Button>
          <Button keyHint="Esc" onPress={props.onDone}>
            Back
          </Button>
        </div>
      </form>
    </BenchStep>
  )
}
