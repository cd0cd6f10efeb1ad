import { useState } from 'react'
import { HandoffNumber } from '../../shared-types/sample-number.ts'
import type { HandoffView } from '../../shared-types/views/handoff.ts'
import { go, usePlace } from '../desk/place.ts'
import { nothing, useAsk, useWho } from '../desk/use-desk.ts'
import { CustodyDialog } from '../custody/custody-dialog.tsx'
import { Button } from '../parts/button.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { Receiving } from '../receipt/receiving.tsx'
import { BeginForm } from './begin-form.tsx'
import { HandoffCautions } from './cautions.tsx'
import { Deliveries } from './deliveries.tsx'
import { EarlierHandoffs } from './earlier-handoffs.tsx'
import './handoff-screen.css'
import { Loading } from './loading.tsx'
import { SignedNote } from './signed-note.tsx'

/** Coolers that leave a station; at an office those that arrived. */
export function HandoffScreen() {
  return useWho()?.station.office ? <Deliveries /> : <Leaving />
}

/** Sealed coolers go to a courier, with a manifest that says what was given. */
function Leaving() {
  const { data, refusal } = useAsk('handoffs', nothing)
  const [isBeginning, setBeginning] = useState(false)
  const [isReceiving, setReceiving] = useState(false)
  const [isTracing, setTracing] = useState(false)
  const shown = useShown(data?.handoffs ?? [])
  if (data === undefined) return <RefusalNote refusal={refusal} />
  const earlier = data.handoffs.filter(({ handoff }) => handoff !== shown?.handoff)
  return (
    <div className="handoff">
      <div className="handoff-main">
        {isReceiving ? (
          <Receiving done="Back to the handoff" onDone={() => setReceiving(false)} />
        ) : (
          <h1>Handoff to the courier</h1>
        )}
        {isReceiving ? null : shown && !isBeginning ? (
          <Shown handoff={shown} onBegin={() => setBeginning(true)} />
        ) : (
          <BeginForm
            onBegun={(handoff) => {
              setBeginning(false)
              go('handoff', handoff)
            }}
          />
        )}
      </div>
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- scrolls without always holding anything to press */}
      <div className="handoff-side" role="group" aria-label="Beside the handoff" tabIndex={0}>
        <div className="row">
          <Button keyHint="Alt+M" onPress={() => setReceiving(true)}>
            Check a delivery
          </Button>
          <Button keyHint="Alt+U" onPress={() => setTracing(true)}>
            Custody of a bag
          </Button>
        </div>
        <HandoffCautions />
        <EarlierHandoffs
          handoffs={earlier}
          onShow={(handoff) => {
            setBeginning(false)
            go('handoff', handoff)
          }}
        />
      </div>
      {isTracing && <CustodyDialog onClose={() => setTracing(false)} />}
    </div>
  )
}

function Shown(props: { handoff: HandoffView; onBegin: () => void }) {
  const { handoff, onBegin } = props
  return handoff.state === 'loading' ? (
    <Loading key={handoff.handoff} handoff={handoff} />
  ) : (
    <SignedNote handoff={handoff} onBegin={onBegin} />
  )
}

/** The handoff that the address names, else the one that is being loaded. */
function useShown(handoffs: readonly HandoffView[]): HandoffView | undefined {
  const named = HandoffNumber.safeParse(usePlace().number).data
  return (
    handoffs.find(({ handoff }) => handoff === named) ??
    handoffs.find(({ state }) => state === 'loading')
  )
}
