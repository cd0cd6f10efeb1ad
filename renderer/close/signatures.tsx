import { useState } from 'react'
import type { CallInput } from '../../shared-types/desk-api.ts'
import type { Refusal, Result } from '../../shared-types/result.ts'
import type { CloseView } from '../../shared-types/views/close.ts'
import type { Need } from '../../shared-types/views/common.ts'
import { useWho } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Panel } from '../parts/panel.tsx'
import { PinEntry } from '../parts/pin-entry.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { saidAt, saidElsewhere } from '../parts/said-at.ts'
import { sayRefused } from '../scanner/strip.ts'
import {
  nobody,
  noSecond,
  type Second,
  SecondSigner,
  type SecondErrors,
  type SecondStop,
} from './second-signer.tsx'

export type Signing = Required<Pick<CallInput<'day.close'>, 'pin' | 'second' | 'aloneBecause'>>

interface SignaturesProps {
  /** What signing does, on its button. */
  deed: string
  second: CloseView['second']
  /** What still stands in the way, the hardest first. */
  open: readonly Need[]
  isHere: boolean
  busy: boolean
  refusal: Refusal | undefined
  onSign: (signing: Signing) => Promise<Result<unknown>>
  /** Somebody signs while something stands in the way: it is shown to them. */
  onTooEarly: () => void
}

/** What is missing for signing, field by field; nothing where Enter may sign. */
function missing(pin: string, second: Second, wanted: boolean): SecondErrors & { lead?: string } {
  if (pin === '') return { lead: 'Type your PIN.' }
  if (wanted && second.who === '') return { who: 'Choose who signs beside you, or nobody.' }
  if (second.who === nobody && wanted && second.because.trim().length < 3)
    return { because: 'Say why in a few words.' }
  if (second.who !== '' && second.who !== nobody && second.pin === '')
    return { pin: 'They type their own PIN.' }
  return {}
}

/** The lead signs with their PIN, and a second person with theirs. */
export function Signatures(props: SignaturesProps) {
  const { open, isHere, busy, refusal } = props
  const { wanted, people } = props.second
  const who = useWho()
  const [pin, setPin] = useState('')
  const [second, setSecond] = useState(noSecond)
  const [here, setHere] = useState<SecondStop | null>(null)
  const [errors, setErrors] = useState<ReturnType<typeof missing>>({})

  async function sign() {
    if (busy) return
    const [first] = open
    if (first) {
      sayRefused(first)
      return props.onTooEarly()
    }
    const lacking = missing(pin, second, wanted)
    // The first Enter leads on from the lead's PIN, and complains of nothing yet.
    const isLedOn = lacking.who !== undefined && here === null
    setErrors(isLedOn ? {} : lacking)
    if (lacking.who) setHere('who')
    if (Object.keys(lacking).length > 0) return
    const person = second.who === '' || second.who === nobody ? null : second.who
    const answer = await props.onSign({
      pin,
      second: person === null ? null : { person, pin: second.pin },
      aloneBecause: person === null ? second.because : '',
    })
    setSecond({ ...second, pin: '' })
    if (!answer.ok) {
      sayRefused(answer.refusal)
      if (answer.refusal.field === 'pin') setPin('')
    }
  }
  return (
    <Panel title="Signatures">
      <form
        className="close-sign stack"
        data-step="sign"
        onSubmit={(event) => {
          event.preventDefault()
          void sign()
        }}
      >
        <PinEntry
          label={`PIN of ${who?.person?.name ?? 'the lead'}`}
          hint="Signing says: counted, explained, and right as far as I know."
          value={pin}
          onChange={setPin}
          autoFocus={isHere}
          error={errors.lead ?? saidAt(refusal, 'pin')}
        />
        <SecondSigner
          people={people}
          second={second}
          onChange={setSecond}
          here={here}
          onChosen={() => setHere('proof')}
          errors={{
            ...errors,
            who: errors.who ?? saidAt(refusal, 'second'),
            pin: errors.pin ?? saidAt(refusal, 'second.pin'),
          }}
        />
        <RefusalNote refusal={saidElsewhere(refusal, ['pin', 'second', 'second.pin'])} />
        {open[0] && <p className="close-not-yet">Not yet: {open[0].say} Enter leads there.</p>}
        <div className="row">
          <Button kind="main" type="submit" keyHint="Enter" isDisabled={busy} why="signing">
            {props.deed}
          </Button>
        </div>
      </form>
    </Panel>
  )
}
