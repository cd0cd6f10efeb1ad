import { useState } from 'react'
import type { CoolerView } from '../../shared-types/views/coolers.ts'
import { useTell } from '../desk/use-desk.ts'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import { DeedDialog } from '../parts/deed-dialog.tsx'
import { saidAt } from '../parts/said-at.ts'

/** A seal is broken on purpose; the log keeps its number and the reason. */
export function BreakSealDialog(props: { cooler: CoolerView; onClose: () => void }) {
  const { cooler, onClose } = props
  const [reason, setReason] = useState('')
  const { tell, busy, refusal } = useTell('seal.break')

  async function breakIt() {
    const answer = await tell({ cooler: cooler.cooler, reason })
    if (!answer.ok) return sayRefused(answer.refusal)
    sayDone(`The seal of ${cooler.name} is broken; the cooler is open.`)
    onClose()
  }
  return (
    <DeedDialog
      title={`Break seal ${cooler.seal ?? ''} of ${cooler.name}`}
      deed="Break the seal"
      kind="danger"
      isBusy={busy}
      refusal={refusal}
      fields={['reason']}
      onDo={breakIt}
      onClose={onClose}
    >
      <TextEntry
        label="Why is it broken?"
        hint="The number stays in the log with this reason. A new seal goes on afterwards."
        value={reason}
        onChange={setReason}
        error={saidAt(refusal, 'reason')}
        autoFocus
        maxLength={200}
      />
    </DeedDialog>
  )
}
