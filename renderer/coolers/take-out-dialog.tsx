import { useState } from 'react'
import { grouped } from '../../shared-types/sample-number.ts'
import type { BagView, CoolerView } from '../../shared-types/views/coolers.ts'
import { useTell } from '../desk/use-desk.ts'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import { tissueOf } from './bench-bags.tsx'
import { DeedDialog } from '../parts/deed-dialog.tsx'
import { saidAt } from '../parts/said-at.ts'

/** A bag goes back from the cooler to the bench, with a reason. */
export function TakeOutDialog(props: { cooler: CoolerView; bag: BagView; onClose: () => void }) {
  const { cooler, bag, onClose } = props
  const [reason, setReason] = useState('')
  const { tell, busy, refusal } = useTell('bag.takeOut')

  async function takeOut() {
    const answer = await tell({ bag: bag.bag, reason })
    if (!answer.ok) return sayRefused(answer.refusal)
    sayDone(`${grouped(bag.bag)} is out of ${cooler.name} and back on the bench.`)
    onClose()
  }
  return (
    <DeedDialog
      title={`Take ${grouped(bag.bag)} out of ${cooler.name}`}
      deed="Take it out"
      kind="danger"
      isBusy={busy}
      refusal={refusal}
      fields={['reason']}
      onDo={takeOut}
      onClose={onClose}
    >
      <p>{tissueOf(bag)}. It is on the bench until it is scanned into a cooler again.</p>
      <TextEntry
        label="Why is it taken out?"
        value={reason}
        onChange={setReason}
        error={saidAt(refusal, 'reason')}
        autoFocus
        maxLength={200}
      />
    </DeedDialog>
  )
}
