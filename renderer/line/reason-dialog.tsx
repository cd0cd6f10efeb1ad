import { useState } from 'react'
import type { AnimalNumber } from '../../shared-types/sample-number.ts'
import { useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone } from '../scanner/strip.ts'
import { calledNumber } from './words.ts'

export type ReasonedCommand = 'animal.putBack' | 'animal.leave'

const words = {
  'animal.putBack': {
    title: (called: string) => `Put ${called} back in the line`,
    next: 'It keeps its place by the time it arrived.',
    usual: ['sampler called away', 'needs other training', 'head too cold to cut'],
    button: 'Put back',
    done: (called: string) => `${called} waits again.`,
  },
  'animal.leave': {
    title: (called: string) => `The hunter of ${called} leaves`,
    next: 'The animal leaves the line unsampled; the record stays.',
    usual: ['could not wait longer', 'withdrew consent', 'will drop the head elsewhere'],
    button: 'Hunter leaves',
    done: (called: string) => `${called} left unsampled.`,
  },
}

/** Asks why, since every animal that leaves its way has a reason in the log. */
export function ReasonDialog(props: {
  command: ReasonedCommand
  animal: AnimalNumber
  onClose: () => void
}) {
  const { command, animal, onClose } = props
  const [reason, setReason] = useState('')
  const { tell, busy, refusal } = useTell(command)
  const called = calledNumber(animal)
  const { title, next, usual, button, done } = words[command]
  async function submit(why: string) {
    const answer = await tell({ animal, reason: why })
    if (!answer.ok) return
    sayDone(done(called))
    onClose()
  }
  return (
    <Dialog title={title(called)} onClose={onClose}>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault()
          void submit(reason)
        }}
      >
        <p>{next}</p>
        <TextEntry label="Why" autoFocus maxLength={200} value={reason} onChange={setReason} />
        <div className="row">
          {usual.map((why) => (
            <Button key={why} onPress={() => setReason(why)}>
              {why}
            </Button>
          ))}
        </div>
        <RefusalNote refusal={refusal} />
        <div>
          <Button kind="main" type="submit" keyHint="Enter" isDisabled={busy}>
            {button}
          </Button>
        </div>
      </form>
    </Dialog>
  )
}
