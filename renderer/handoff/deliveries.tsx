import { useState } from 'react'
import { CustodyDialog } from '../custody/custody-dialog.tsx'
import { Button } from '../parts/button.tsx'
import { Receiving } from '../receipt/receiving.tsx'
import { HandoffCautions } from './cautions.tsx'
import './handoff-screen.css'

/** At the office: counter-scans of what stations handed over, one delivery after another. */
export function Deliveries() {
  const [delivery, setDelivery] = useState(1)
  const [isTracing, setTracing] = useState(false)
  return (
    <div className="handoff">
      <div className="handoff-main">
        <Receiving
          key={delivery}
          done="Another delivery"
          onDone={() => setDelivery(delivery + 1)}
        />
      </div>
      <div className="handoff-side">
        <div className="row">
          <Button keyHint="Alt+U" onPress={() => setTracing(true)}>
            Custody of a bag
          </Button>
        </div>
        <HandoffCautions />
      </div>
      {isTracing && <CustodyDialog onClose={() => setTracing(false)} />}
    </div>
  )
}
