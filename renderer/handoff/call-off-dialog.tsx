import { useState } from 'react'
import type { HandoffView } from '../../shared-types/views/handoff.ts'
import { DeedDialog } from '../parts/deed-dialog.tsx'
import { saidAt } from '../parts/said-at.ts'
import { useTell } from '../desk/use-desk.ts'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'

/** A handoff that does not happen: the coolers stay sealed and here. */
export function CallOffDialog(props: { handoff: HandoffView; onClose: () => void }) {
  const { handoff, onClose } = props
  const [reason, setReason] = useState('')
  const { tell, busy, refusal } = useTell('handoff.callOff')

  async function callOff() {
    const answer = await tell({ handoff: handoff.handoff, reason })
    if (!answer.ok) return sayRefused(answer.refusal)
    sayDone('The handoff is called off. Its coolers stay here, sealed.')
    onClose()
  }
  return (
    <DeedDialog
      title="Call this handoff off"
      deed="Call it off"
      kind="danger"
      isBusy={busy}
      refusal={refusal}
      fields={['reason']}
      onDo={callOff}
      onClose={onClose}
    >
      <TextEntry
        label="Why does it not happen?"
        value={reason}
        onChange={setReason}
        error={saidAt(refusal, 'reason')}
        autoFocus
        maxLength={200}
      />
    </DeedDialog>
  )
}
