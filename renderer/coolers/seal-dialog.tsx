import { useState } from 'react'
import type { CoolerView } from '../../shared-types/views/coolers.ts'
import { useTell } from '../desk/use-desk.ts'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone } from '../scanner/strip.ts'
import { DeedDialog } from '../parts/deed-dialog.tsx'
import { saidAt } from '../parts/said-at.ts'

/** The lid is closed and a numbered seal goes on; from then on nothing goes in or out. */
export function SealDialog(props: { cooler: CoolerView; onClose: () => void }) {
  const { cooler, onClose } = props
  const [seal, setSeal] = useState('')
  const { tell, busy, refusal } = useTell('cooler.seal')

  async function putOn() {
    const answer = await tell({ cooler: cooler.cooler, seal })
    if (!answer.ok) return
    sayDone(`${cooler.name} is sealed with ${seal.toUpperCase()}.`)
    onClose()
  }
  return (
    <DeedDialog
      title={`Seal ${cooler.name}`}
      deed="Seal it"
      isBusy={busy}
      refusal={refusal}
      fields={['seal']}
      onDo={putOn}
      onClose={onClose}
    >
      <p className="cooler-seal-count">
        By the log <b className="numbers">{cooler.bags}</b> inside. Count the bags, close the lid,
        write the count on it and put the seal on.
      </p>
      <TextEntry
        label="Number on the seal"
        hint="Scan it or type it: letters, digits and hyphens, as printed."
        value={seal}
        onChange={setSeal}
        error={saidAt(refusal, 'seal')}
        takesScan
        numbers
        autoFocus
        maxLength={20}
      />
    </DeedDialog>
  )
}
