import { type FormEvent, useState } from 'react'
import { MissedReason, missedWords, siteWords } from '../../shared-types/tissue.ts'
import type { AnimalView, SiteView } from '../../shared-types/views/animal.ts'
import { useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import { BenchStep } from './bench-step.tsx'

const reasonOptions = MissedReason.options.map((value, place) => ({
  value,
  label: missedWords[value],
  key: String(place + 1),
}))

/** Why a tissue could not be taken. */
export function Miss(props: {
  animal: AnimalView
  site: SiteView
  onMissed: () => void
  onBack: () => void
}) {
  const { animal, site } = props
  const [reason, setReason] = useState<MissedReason | null>(null)
  const [words, setWords] = useState('')
  const { tell, busy, refusal } = useTell('tissue.miss')
  async function miss(why: MissedReason) {
    const answer = await tell({ animal: animal.animal, site: site.site, reason: why, words })
    if (!answer.ok) return sayRefused(answer.refusal)
    sayDone(`The ${siteWords[site.site]} is recorded as not taken: ${missedWords[why]}.`)
    props.onMissed()
  }
  function submit(event: FormEvent) {
    event.preventDefault()
    if (reason !== null && !busy) void miss(reason)
  }
  return (
    <BenchStep title={`The ${siteWords[site.site]} is not taken: why?`} focused>
      <form className="stack" onSubmit={submit}>
        <Choice
          label="Reason"
          options={reasonOptions}
          value={reason}
          onChange={setReason}
          autoFocus
        />
        <TextEntry
          label="In your words"
          hint={reason === 'other' ? undefined : 'optional'}
          value={words}
          onChange={setWords}
          maxLength={200}
          error={refusal?.say}
        />
        <div className="row">
          <Button
            kind="main"
            type="submit"
            keyHint="Enter"
            isDisabled={reason === null}
            why="choose first"
          >
            Record as not taken
          </Button>
          <Button keyHint="Esc" onPress={props.onBack}>
            Back
          </Button>
        </div>
      </form>
    </BenchStep>
  )
}
