import { useState } from 'react'
import type { PersonView } from '../../shared-types/views/people.ts'
import { useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { PinEntry } from '../parts/pin-entry.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { sayDone } from '../scanner/strip.ts'

/** A new PIN: whoever sits here proves themselves with their own first. */
export function PinDialog(props: { person: PersonView; onClose: () => void }) {
  const { person, onClose } = props
  const [ownPin, setOwnPin] = useState('')
  const [pin, setPin] = useState('')
  const [pinAgain, setPinAgain] = useState('')
  const [isTried, setTried] = useState(false)
  const { tell, busy, refusal } = useTell('person.setPin')
  const errorIn = (field: string) => (refusal?.field === field ? refusal.say : undefined)
  const differ = isTried && pin !== pinAgain ? 'The two PINs differ: type both again.' : undefined
  async function submit() {
    setTried(true)
    if (pin !== pinAgain) return
    const answer = await tell({ person: person.person, ownPin, pin })
    if (!answer.ok) return
    sayDone(`${person.name} has a new PIN.`)
    onClose()
  }
  return (
    <Dialog title={`New PIN for ${person.name}`} onClose={onClose}>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault()
          void submit()
        }}
      >
        <PinEntry
          label="Your own PIN, of whoever is signed in here"
          autoFocus
          value={ownPin}
          error={errorIn('ownPin')}
          onChange={setOwnPin}
        />
        <PinEntry
          label="New PIN"
          hint="4 to 8 digits."
          value={pin}
          error={errorIn('pin')}
          onChange={setPin}
        />
        <PinEntry
          label="New PIN once more"
          value={pinAgain}
          error={differ}
          onChange={setPinAgain}
        />
        <RefusalNote refusal={refusal} />
        <div>
          <Button kind="main" type="submit" keyHint="Enter" isDisabled={busy}>
            Set the PIN
          </Button>
        </div>
      </form>
    </Dialog>
  )
}
