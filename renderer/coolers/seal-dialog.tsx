import { useState } from 'react'
import type { CoolerView } from '../../shared-types/views/coolers.ts'
import { nothing, useAsk, useTell } from '../desk/use-desk.ts'
import { ReadingText } from './reading.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { Notice } from '../parts/notice.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import { DeedDialog } from '../parts/deed-dialog.tsx'
import { saidAt } from '../parts/said-at.ts'

/** The lid is closed and a numbered seal goes on; from then on nothing goes in or out. */
export function SealDialog(props: { cooler: CoolerView; onClose: () => void }) {
  const { cooler, onClose } = props
  const [seal, setSeal] = useState('')
  const { tell, busy, refusal } = useTell('cooler.seal')

  async function putOn() {
    const answer = await tell({ cooler: cooler.cooler, seal })
    if (!answer.ok) return sayRefused(answer.refusal)
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
      <SealWarnings cooler={cooler} />
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

/** What a person should know before the lid stays shut: it does not stop them. */
function SealWarnings({ cooler }: { cooler: CoolerView }) {
  const bench = useAsk('coolers', nothing).data?.bench.length ?? 0
  const { lastReading } = cooler
  return (
    <>
      {lastReading?.excursion && (
        <Notice kind="warn">
          <p>
            The last reading was <ReadingText reading={lastReading} />. Put it right and read again
            before sealing, or tell the laboratory.
          </p>
        </Notice>
      )}
      {lastReading === null && (
        <Notice kind="warn">Nobody has read a temperature in this cooler yet.</Notice>
      )}
      {bench > 0 && (
        <Notice kind="warn">
          {bench} sealed {bench === 1 ? 'bag is' : 'bags are'} still on the bench: do they belong in
          here?
        </Notice>
      )}
    </>
  )
}
