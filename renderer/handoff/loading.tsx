import { useState } from 'react'
import { type CoolerNumber, grouped, readNumberFor } from '../../shared-types/sample-number.ts'
import type { HandoffView } from '../../shared-types/views/handoff.ts'
import { useMay } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { NumberEntry } from '../parts/number-entry.tsx'
import { Panel } from '../parts/panel.tsx'
import { useScan } from '../scanner/scans.ts'
import { sayRefused } from '../scanner/strip.ts'
import { CallOffDialog } from './call-off-dialog.tsx'
import { LoadList } from './load-list.tsx'
import { Packing } from './packing.tsx'
import { ScanOutForm } from './scan-out-form.tsx'
import { SignForm } from './sign-form.tsx'

/** A handoff being loaded: each cooler is read once more on its way out, then both sign. */
export function Loading(props: { handoff: HandoffView }) {
  const { handoff } = props
  const { cooler, take, put } = useCoolerInHand(handoff)
  const [isCallingOff, setCallingOff] = useState(false)
  const mayCallOff = useMay('handoff.callOff')
  const left = handoff.coolers.filter(({ scanned }) => scanned === null).length
  return (
    <>
      <Panel
        title={`2. Load for ${handoff.destination}`}
        actions={
          <Button
            keyHint="Alt+X"
            kind="danger"
            onPress={() => setCallingOff(true)}
            isDisabled={!mayCallOff}
            why="only the lead calls it off"
          >
            Call it off
          </Button>
        }
      >
        <LoadList coolers={handoff.coolers} inHand={cooler?.cooler} onTake={put} />
        {cooler ? (
          <ScanOutForm
            key={cooler.cooler}
            handoff={handoff.handoff}
            cooler={cooler}
            onDone={() => put(undefined)}
          />
        ) : (
          left > 0 && (
            <NumberEntry
              label="Scan the label of the next cooler, or type its number"
              onNumber={take}
              autoFocus
            />
          )
        )}
      </Panel>
      <Packing handoff={handoff} />
      {left === 0 && !cooler && <SignForm handoff={handoff} />}
      {isCallingOff && <CallOffDialog handoff={handoff} onClose={() => setCallingOff(false)} />}
    </>
  )
}

/** The cooler whose label was scanned last and whose seal is being read. */
function useCoolerInHand(handoff: HandoffView) {
  const [number, put] = useState<CoolerNumber>()
  function take(text: string) {
    const read = readNumberFor(['C'], text)
    if (!read.ok) return sayRefused(read.refusal)
    const found = handoff.coolers.find(({ cooler }) => cooler === read.value)
    if (found) return put(found.cooler)
    sayRefused({
      say: `Cooler ${grouped(read.value)} is not part of this handoff.`,
      next: 'Leave it here, or call the handoff off and begin again with it.',
    })
  }
  useScan(take)
  return { cooler: handoff.coolers.find(({ cooler }) => cooler === number), take, put }
}
