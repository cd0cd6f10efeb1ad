import { useState } from 'react'
import type { LocalDate } from '../../shared-types/local-date.ts'
import type { CloseView } from '../../shared-types/views/close.ts'
import { saidAt, saidElsewhere } from '../parts/said-at.ts'
import { useMay, useTell, useWho } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Notice } from '../parts/notice.tsx'
import { Panel } from '../parts/panel.tsx'
import { PinEntry } from '../parts/pin-entry.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { sayDone } from '../scanner/strip.ts'
import {
  nobody,
  noSecond,
  type Second,
  SecondSigner,
  type SecondErrors,
  type SecondStop,
} from './second-signer.tsx'
import { useCloseSheet } from './use-close-sheet.ts'

interface SignFormProps {
  date: LocalDate
  second: CloseView['second']
  isReady: boolean
  isHere: boolean
}

/** The lead signs the day with their PIN, a second person with theirs, and the close sheet opens. */
export function SignForm(props: SignFormProps) {
  const maySign = useMay('day.close')
  if (maySign) return <LeadSigns {...props} />
  return (
    <Panel title="Signatures">
      <Notice kind="info">
        Only the lead signs. Change person (Ctrl+L); everything counted so far is kept.
      </Notice>
    </Panel>
  )
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

function LeadSigns(props: SignFormProps) {
  const { date, isReady, isHere } = props
  const { wanted, people } = props.second
  const who = useWho()
  const [pin, setPin] = useState('')
  const [second, setSecond] = useState(noSecond)
  const [here, setHere] = useState<SecondStop | null>(null)
  const [errors, setErrors] = useState<ReturnType<typeof missing>>({})
  const { tell, busy, refusal } = useTell('day.close')
  const openSheet = useCloseSheet()

  async function sign() {
    if (busy || !isReady) return
    const lacking = missing(pin, second, wanted)
    // The first Enter leads on from the lead's PIN, and complains of nothing yet.
    const isLedOn = lacking.who !== undefined && here === null
    setErrors(isLedOn ? {} : lacking)
    if (lacking.who) setHere('who')
    if (Object.keys(lacking).length > 0) return
    const person = second.who === '' || second.who === nobody ? null : second.who
    const answer = await tell({
      pin,
      second: person === null ? null : { person, pin: second.pin },
      aloneBecause: person === null ? second.because : '',
    })
    setSecond({ ...second, pin: '' })
    if (!answer.ok) {
      if (answer.refusal.field === 'pin') setPin('')
      return
    }
    sayDone('The day is closed and signed.')
    await openSheet(date)
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
        <div className="row">
          <Button
            kind="main"
            type="submit"
            keyHint="Enter"
            isDisabled={busy || !isReady}
            why={isReady ? 'signing' : 'something still stands in the way, see the top'}
          >
            Sign and close the day
          </Button>
        </div>
      </form>
    </Panel>
  )
}
