import { useEffect, useRef, useState } from 'react'
import { VarianceReason, varianceWords } from '../../shared-types/close.ts'
import type { CloseItem } from '../../shared-types/views/close.ts'
import { saidAt, saidElsewhere } from '../parts/said-at.ts'
import { useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone } from '../scanner/strip.ts'
import { Causes } from './causes.tsx'
import { stepName } from './next-step.ts'

const reasons = VarianceReason.options.map((value, place) => ({
  value,
  label: varianceWords[value],
  // Ten reasons, nine digits: the last is 0.
  key: String((place + 1) % 10),
}))

/** Why a count differs: a reason by its key, a few words where they help, Enter. */
export function ExplainForm(props: { item: CloseItem; onDone: () => void }) {
  const { item, onDone } = props
  const [reason, setReason] = useState<VarianceReason | null>(item.explained?.reason ?? null)
  const [words, setWords] = useState(item.explained?.words ?? '')
  const [isMissing, setMissing] = useState(false)
  const { tell, busy, refusal } = useTell('variance.explain')
  const form = useRef<HTMLFormElement>(null)
  useEffect(() => {
    form.current?.scrollIntoView({ block: 'nearest' })
  }, [])

  async function explain() {
    setMissing(reason === null)
    if (reason === null || busy) return
    const answer = await tell({ item: item.item, reason, words })
    if (!answer.ok) return
    sayDone(`${item.words}: ${varianceWords[reason]}.`)
    onDone()
  }
  return (
    <form
      ref={form}
      className="close-explain stack"
      data-step={stepName({ at: 'explain', key: item.key })}
      aria-label={`Why ${item.words} differs`}
      onSubmit={(event) => {
        event.preventDefault()
        void explain()
      }}
    >
      <p>
        <b>{item.words}</b>
      </p>
      <Causes causes={item.causes} keys={{ look: 'Alt+L', settle: 'Alt+Y' }} onSettled={onDone} />
      <Choice
        label="Why does it differ? Count once more first."
        options={reasons}
        value={reason}
        onChange={setReason}
        error={isMissing ? 'Choose a reason: press its number.' : saidAt(refusal, 'reason')}
        autoFocus
      />
      <TextEntry
        label="In a few words"
        hint="Needed for 'other', helpful for all."
        value={words}
        onChange={setWords}
        error={saidAt(refusal, 'words')}
        maxLength={200}
      />
      <RefusalNote refusal={saidElsewhere(refusal, ['reason', 'words'])} />
      <div className="row">
        <Button kind="main" type="submit" keyHint="Enter" isDisabled={busy}>
          Keep this reason
        </Button>
      </div>
    </form>
  )
}
