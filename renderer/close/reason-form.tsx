import { type ReactNode, useEffect, useRef, useState } from 'react'
import { type VarianceReason, varianceWords } from '../../shared-types/close.ts'
import type { Refusal } from '../../shared-types/result.ts'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { saidAt, saidElsewhere } from '../parts/said-at.ts'
import { TextEntry } from '../parts/text-entry.tsx'

/** Why a count differs: a reason by its key, a few words where they help, Enter. */
export function ReasonForm(props: {
  /** The thing counted, in words. */
  about: string
  step: string
  reasons: readonly VarianceReason[]
  given: { readonly reason: VarianceReason; readonly words: string } | null
  busy: boolean
  refusal: Refusal | undefined
  onKeep: (reason: VarianceReason, words: string) => Promise<void>
  /** What speaks for one reason or another. */
  children?: ReactNode
}) {
  const { about, given, busy, refusal } = props
  const [reason, setReason] = useState<VarianceReason | null>(given?.reason ?? null)
  const [words, setWords] = useState(given?.words ?? '')
  const [isMissing, setMissing] = useState(false)
  const form = useRef<HTMLFormElement>(null)
  useEffect(() => {
    form.current?.scrollIntoView({ block: 'nearest' })
  }, [])
  const options = props.reasons.map((value, place) => ({
    value,
    label: varianceWords[value],
    key: value === 'other' ? '0' : String(place + 1),
  }))
  return (
    <form
      ref={form}
      className="close-explain stack"
      data-step={props.step}
      aria-label={`Why ${about} differs`}
      onSubmit={(event) => {
        event.preventDefault()
        setMissing(reason === null)
        if (reason !== null && !busy) void props.onKeep(reason, words)
      }}
    >
      <p>
        <b>{about}</b>
      </p>
      {props.children}
      <Choice
        label="Why does it differ? Count once more first."
        options={options}
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
