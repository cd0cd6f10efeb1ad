import { useState } from 'react'
import { nothing, useAsk, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone } from '../scanner/strip.ts'

/** Sets the passphrase of the contacts, or opens them with it. */
export function PassphraseDialog(props: { task: 'set' | 'unlock'; onClose: () => void }) {
  const { task, onClose } = props
  return task === 'set' ? <SetDialog onClose={onClose} /> : <UnlockDialog onClose={onClose} />
}

function SetDialog({ onClose }: { onClose: () => void }) {
  const [passphrase, setPassphrase] = useState('')
  const [again, setAgain] = useState('')
  const [keepKeyHere, setKeepKeyHere] = useState(true)
  const [isTried, setTried] = useState(false)
  const { tell, busy, refusal } = useTell('contacts.setPassphrase')
  const hasKeyStore = useAsk('contacts', nothing).data?.seal === 'key-store'
  const differ = isTried && passphrase !== again ? 'The two differ: type both again.' : undefined
  async function submit() {
    setTried(true)
    if (passphrase !== again) return
    const set = await tell({ passphrase, keepKeyHere })
    if (!set.ok) return
    sayDone('The passphrase is set. Write it down and keep it apart from the laptop.')
    onClose()
  }
  return (
    <Dialog title="Passphrase for the contacts" onClose={onClose}>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault()
          void submit()
        }}
      >
        <p>
          Without it nobody can read the contacts on another laptop, and nobody can bring it back.
        </p>
        <TextEntry
          label="Passphrase"
          hint="At least 12 characters: four words you can remember."
          autoFocus
          isSecret
          value={passphrase}
          onChange={setPassphrase}
        />
        <TextEntry label="Once more" isSecret value={again} error={differ} onChange={setAgain} />
        {!hasKeyStore && (
          <label className="row">
            <input
              type="checkbox"
              checked={!keepKeyHere}
              onChange={(event) => setKeepKeyHere(!event.target.checked)}
            />
            Take the key off this laptop's disk: the lead types the passphrase after every start
          </label>
        )}
        <RefusalNote refusal={refusal} />
        <div>
          <Button kind="main" type="submit" keyHint="Enter" isDisabled={busy}>
            Set the passphrase
          </Button>
        </div>
      </form>
    </Dialog>
  )
}

function UnlockDialog({ onClose }: { onClose: () => void }) {
  const [passphrase, setPassphrase] = useState('')
  const { tell, busy, refusal } = useTell('contacts.unlock')
  async function submit() {
    const opened = await tell({ passphrase })
    if (!opened.ok) return
    sayDone('The contacts are open on this laptop.')
    onClose()
  }
  return (
    <Dialog title="Unlock the contacts" onClose={onClose}>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault()
          void submit()
        }}
      >
        <TextEntry
          label="Passphrase"
          autoFocus
          isSecret
          value={passphrase}
          onChange={setPassphrase}
        />
        <RefusalNote refusal={refusal} />
        <div>
          <Button kind="main" type="submit" keyHint="Enter" isDisabled={busy}>
            Unlock
          </Button>
        </div>
      </form>
    </Dialog>
  )
}
