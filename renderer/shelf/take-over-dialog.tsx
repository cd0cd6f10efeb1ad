import { useState } from 'react'
import { useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { PinEntry } from '../parts/pin-entry.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'

/** A lead stands for it that nobody goes on with this desk elsewhere. */
export function TakeOverDialog(props: { file: string; onClose: () => void }) {
  const [reason, setReason] = useState('')
  const [pin, setPin] = useState('')
  const [passphrase, setPassphrase] = useState('')
  const { tell, busy, refusal } = useTell('desk.takeOver')
  async function submit() {
    const { file } = props
    const taken = await tell({ file, pin, reason, passphrase: passphrase || undefined })
    setPin('')
    if (taken.ok) props.onClose()
  }
  return (
    <Dialog title="Take this desk over" onClose={props.onClose}>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault()
          void submit()
        }}
      >
        <p>
          Only if the other laptop is lost or will never open this log again. If both go on, one
          number can end up on two animals.
        </p>
        <TextEntry
          label="What became of the other laptop"
          autoFocus
          maxLength={200}
          value={reason}
          onChange={setReason}
        />
        <PinEntry label="PIN of a station lead" value={pin} onChange={setPin} />
        <TextEntry
          label="Passphrase of the contacts"
          hint="If one was set; without it contacts stay locked here."
          isSecret
          value={passphrase}
          onChange={setPassphrase}
        />
        <RefusalNote refusal={refusal} />
        <div>
          <Button kind="danger" type="submit" keyHint="Enter" isDisabled={busy}>
            Take it over here
          </Button>
        </div>
      </form>
    </Dialog>
  )
}
