import { type SampleNumber, grouped } from '../../shared-types/sample-number.ts'
import { DeedDialog } from '../parts/deed-dialog.tsx'
import { useTell } from '../desk/use-desk.ts'
import { sayDone } from '../scanner/strip.ts'
import { VoidReasonFields, useVoidReason } from './void-reason.tsx'

/** A label that must not be used: from then on the desk refuses its scan. */
export function VoidDialog(props: { number: SampleNumber; onClose: () => void }) {
  const { number, onClose } = props
  const hold = useVoidReason()
  const { tell, busy, refusal } = useTell('label.void')
  async function makeVoid() {
    if (hold.reason === null) return hold.set({ error: 'Choose a reason.' })
    const answer = await tell({ number, reason: hold.reason, words: hold.words })
    if (!answer.ok) return
    sayDone(`Label ${grouped(number)} is void. Destroy it.`)
    onClose()
  }
  return (
    <DeedDialog
      title={`Void ${grouped(number)}`}
      deed="Void the label"
      kind="danger"
      isBusy={busy}
      refusal={refusal}
      fields={[]}
      onDo={makeVoid}
      onClose={onClose}
    >
      <VoidReasonFields hold={hold} />
    </DeedDialog>
  )
}
