import { useState } from 'react'
import { useMay, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { Panel } from '../parts/panel.tsx'
import { PinEntry } from '../parts/pin-entry.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { sayDone } from '../scanner/strip.ts'

/** A desk goes on at one laptop only; this is how it changes to another. */
export function MovePanel(props: { onMoved: () => void }) {
  const [isAsking, setAsking] = useState(false)
  const mayMove = useMay('desk.moveOut')
  return (
    <Panel title="Move this desk to another laptop">
      <p>
        The log stops here and a copy of it on the backup stick goes on there. Two laptops that both
        went on would give one number to two animals.
      </p>
      <div>
        <Button
          isDisabled={!mayMove}
          why={mayMove ? undefined : 'a station lead does this'}
          onPress={() => setAsking(true)}
        >
          Move the desk
        </Button>
      </div>
      {isAsking && <MoveDialog onClose={() => setAsking(false)} onMoved={props.onMoved} />}
    </Panel>
  )
}

function MoveDialog(props: { onClose: () => void; onMoved: () => void }) {
  const [pin, setPin] = useState('')
  const { tell, busy, refusal } = useTell('desk.moveOut')
  async function submit() {
    const moved = await tell({ pin })
    setPin('')
    if (!moved.ok) return
    props.onMoved()
    sayDone(
      `${moved.value.file} is on the stick. Copy it into the Duskline folder of the other laptop and open it there.`,
    )
  }
  return (
    <Dialog title="Move this desk" onClose={props.onClose}>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault()
          void submit()
        }}
      >
        <p>Nobody can go on working in this log at this laptop afterwards.</p>
        <PinEntry label="Your PIN" autoFocus value={pin} onChange={setPin} />
        <RefusalNote refusal={refusal} />
        <div>
          <Button kind="danger" type="submit" keyHint="Enter" isDisabled={busy}>
            {busy ? 'Handing over…' : 'Stop here and hand over'}
          </Button>
        </div>
      </form>
    </Dialog>
  )
}
