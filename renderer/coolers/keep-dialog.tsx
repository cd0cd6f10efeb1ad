import { useState } from 'react'
import type { CoolerKeptBy } from '../../shared-types/cooler.ts'
import type { CoolerView } from '../../shared-types/views/coolers.ts'
import { useTell } from '../desk/use-desk.ts'
import { Choice } from '../parts/choice.tsx'
import { DeedDialog } from '../parts/deed-dialog.tsx'
import { saidAt } from '../parts/said-at.ts'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'

const words: Record<CoolerKeptBy, { label: string; hint: string; say: string }> = {
  locked: {
    label: 'Under lock',
    hint: 'a room, truck or box; who has the key',
    say: 'is locked up',
  },
  'secure-area': {
    label: 'In a secure area',
    hint: 'only named people enter; who they are',
    say: 'is in a secure area',
  },
  view: { label: 'In view again', hint: 'by whom', say: 'is in view again' },
}

/** Custody while nobody stands beside it and no seal is on: where it is kept, and who can get at it. */
export function KeepDialog(props: { cooler: CoolerView; onClose: () => void }) {
  const { cooler, onClose } = props
  const [kept, setKept] = useState<CoolerKeptBy>('locked')
  const [where, setWhere] = useState('')
  const { tell, busy, refusal } = useTell('cooler.keep')
  async function keep() {
    const answer = await tell({ cooler: cooler.cooler, kept, where })
    if (!answer.ok) return sayRefused(answer.refusal)
    sayDone(`${cooler.name} ${words[kept].say}: ${where}.`)
    onClose()
  }
  return (
    <DeedDialog
      title={`How ${cooler.name} is kept from now on`}
      deed="Record it"
      isBusy={busy}
      refusal={refusal}
      fields={['where']}
      onDo={keep}
      onClose={onClose}
    >
      <Choice
        label="How"
        options={(['locked', 'secure-area', 'view'] as const).map((value, place) => ({
          value,
          label: words[value].label,
          hint: words[value].hint,
          key: String(place + 1),
        }))}
        value={kept}
        onChange={setKept}
        autoFocus
      />
      <TextEntry
        label="Where, and who has key or access"
        value={where}
        onChange={setWhere}
        error={saidAt(refusal, 'where')}
        maxLength={120}
      />
    </DeedDialog>
  )
}
