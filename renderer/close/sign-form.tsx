import { useState } from 'react'
import type { LocalDate } from '../../shared-types/local-date.ts'
import { saidAt, saidElsewhere } from '../coolers/said-at.ts'
import { useMay, useTell, useWho } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Notice } from '../parts/notice.tsx'
import { Panel } from '../parts/panel.tsx'
import { PinEntry } from '../parts/pin-entry.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { sayDone } from '../scanner/strip.ts'
import { useCloseSheet } from './use-close-sheet.ts'

/** The lead signs the day with their PIN, and the close sheet opens. */
export function SignForm(props: { date: LocalDate; isReady: boolean; isHere: boolean }) {
  const { date, isReady, isHere } = props
  const who = useWho()
  const maySign = useMay('day.close')
  const [pin, setPin] = useState('')
  const [isEmpty, setEmpty] = useState(false)
  const { tell, busy, refusal } = useTell('day.close')
  const openSheet = useCloseSheet()

  async function sign() {
    setEmpty(pin === '')
    if (busy || !isReady || pin === '') return
    const answer = await tell({ pin })
    setPin('')
    if (!answer.ok) return
    sayDone('The day is closed and signed.')
    await openSheet(date)
  }
  if (!maySign)
    return (
      <Panel title="Signature of the lead">
        <Notice kind="info">
          Only the lead signs. Change person (Ctrl+L); everything counted so far is kept.
        </Notice>
      </Panel>
    )
  return (
    <Panel title="Signature of the lead">
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
          error={isEmpty ? 'Type your PIN.' : saidAt(refusal, 'pin')}
        />
        <RefusalNote refusal={saidElsewhere(refusal, ['pin'])} />
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
