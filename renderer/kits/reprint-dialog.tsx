import { useState } from 'react'
import { grouped, numberParts, type SampleNumber } from '../../shared-types/sample-number.ts'
import type { LabelKind } from '../../shared-types/views/printing.ts'
import { useTell } from '../desk/use-desk.ts'
import { takeLabels } from '../labels/hand-over.ts'
import { useLabelStock } from '../labels/use-printing.ts'
import { ManyChoice } from '../parts/choice.tsx'
import { DeedDialog } from '../parts/deed-dialog.tsx'
import { saidAt } from '../parts/said-at.ts'
import { sayDone } from '../scanner/strip.ts'
import { useVoidReason, VoidReasonFields } from './void-reason.tsx'

const fates = [
  {
    value: 'destroyed',
    label: 'I have destroyed the old label',
    hint: 'torn up and thrown away, so that it can be stuck on nothing',
    key: 'd',
  },
] as const

function kindOf(number: SampleNumber): LabelKind {
  const { part } = numberParts(number)
  return part === 'C' ? 'coolers' : part === 'P' ? 'badges' : 'kits'
}

/** The same label once more; the copy before it is destroyed or lost, and void from then on. */
export function ReprintDialog(props: { number: SampleNumber; onClose: () => void }) {
  const { number, onClose } = props
  const hold = useVoidReason()
  const [fate, setFate] = useState<'destroyed'[]>([])
  const stock = useLabelStock(kindOf(number))
  const { tell, busy, refusal } = useTell('label.reprint')
  async function reprint() {
    const { reason, words } = hold
    if (reason === null) return hold.set({ error: 'Choose a reason.' })
    const destroyed = fate.length > 0
    const answer = await tell({ number, reason, words, stock, destroyed })
    if (!answer.ok) return
    const { copy } = answer.value
    sayDone(`Copy ${copy} of ${grouped(number)} is made. ${takeLabels(answer.value)}`)
    onClose()
  }
  return (
    <DeedDialog
      title={`Reprint ${grouped(number)}`}
      deed="Void the old one and reprint"
      isBusy={busy}
      refusal={refusal}
      fields={['destroyed']}
      onDo={reprint}
      onClose={onClose}
    >
      <VoidReasonFields hold={hold} />
      <ManyChoice
        label="The old label"
        options={fates}
        value={fate}
        onChange={setFate}
        error={saidAt(refusal, 'destroyed')}
        autoFocus={refusal?.field === 'destroyed'}
      />
    </DeedDialog>
  )
}
