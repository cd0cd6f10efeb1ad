import { useState } from 'react'
import { type KitNumber, grouped } from '../../shared-types/sample-number.ts'
import { DeedDialog } from '../parts/deed-dialog.tsx'
import { saidAt } from '../parts/said-at.ts'
import { useTell } from '../desk/use-desk.ts'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'

/** A numbered kit that is torn, wet or dropped: it leaves the ledger and its labels are void. */
export function SpoilDialog(props: { kit: KitNumber; onClose: () => void }) {
  const { kit, onClose } = props
  const [reason, setReason] = useState('')
  const { tell, busy, refusal } = useTell('kit.spoil')
  async function spoil() {
    const answer = await tell({ kit, reason })
    if (!answer.ok) return sayRefused(answer.refusal)
    sayDone(`Kit ${grouped(kit)} is spoiled and its labels are void.`)
    onClose()
  }
  return (
    <DeedDialog
      title={`Kit ${grouped(kit)} is spoiled`}
      deed="Record as spoiled"
      kind="danger"
      isBusy={busy}
      refusal={refusal}
      fields={['reason']}
      onDo={spoil}
      onClose={onClose}
    >
      <TextEntry
        label="What happened to it?"
        value={reason}
        onChange={setReason}
        maxLength={200}
        error={saidAt(refusal, 'reason')}
        autoFocus
      />
    </DeedDialog>
  )
}
