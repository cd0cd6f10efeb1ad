import { type SampleNumber, grouped } from '../../shared-types/sample-number.ts'
import { DeedDialog } from '../parts/deed-dialog.tsx'
import { useTell } from '../desk/use-desk.ts'
import { openPdf } from '../parts/pdf.ts'
import { sayDone } from '../scanner/strip.ts'
import { useLabelStock } from './label-stock.ts'
import { VoidReasonFields, useVoidReason } from './void-reason.tsx'

/** The same label once more; the copy before it is void from then on. */
export function ReprintDialog(props: { number: SampleNumber; onClose: () => void }) {
  const { number, onClose } = props
  const hold = useVoidReason()
  const stock = useLabelStock()
  const { tell, busy, refusal } = useTell('label.reprint')
  async function reprint() {
    if (hold.reason === null) return hold.set({ error: 'Choose a reason.' })
    const answer = await tell({ number, reason: hold.reason, words: hold.words, stock })
    if (!answer.ok) return
    openPdf(answer.value.pdf)
    sayDone(`Copy ${answer.value.copy} of ${grouped(number)} is made. Destroy the old label.`)
    onClose()
  }
  return (
    <DeedDialog
      title={`Reprint ${grouped(number)}`}
      deed="Void the old one and reprint"
      isBusy={busy}
      refusal={refusal}
      fields={[]}
      onDo={reprint}
      onClose={onClose}
    >
      <VoidReasonFields hold={hold} />
    </DeedDialog>
  )
}
