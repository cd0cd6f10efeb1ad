import { useState } from 'react'
import type { Signature } from '../../shared-types/handoff.ts'
import type { HandoffView } from '../../shared-types/views/handoff.ts'
import { saidAt, saidElsewhere } from '../parts/said-at.ts'
import { go } from '../desk/place.ts'
import { useMay, useTell, useWho } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Notice } from '../parts/notice.tsx'
import { Panel } from '../parts/panel.tsx'
import { PinEntry } from '../parts/pin-entry.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import { SignatureEntry } from './signature-entry.tsx'
import { useManifest } from './use-manifest.ts'

const onPaper: Signature = { how: 'on-paper' }
const fields = ['courier.name', 'courier.organisation', 'courier.vehicle', 'pin'] as const

/** Where Enter leads, one after the other. */
type Stop = 'name' | 'organisation' | 'vehicle' | 'signature' | 'pin'

/** Courier and lead sign for what was loaded; afterwards the manifest opens. */
export function SignForm(props: { handoff: HandoffView }) {
  const { handoff } = props
  const who = useWho()
  const maySign = useMay('handoff.sign')
  const [courier, setCourier] = useState({ name: '', organisation: '', vehicle: '' })
  const [courierSignature, setCourierSignature] = useState<Signature>(onPaper)
  const [leadSignature, setLeadSignature] = useState<Signature>(onPaper)
  const [pin, setPin] = useState('')
  const [here, setHere] = useState<Stop>('name')
  const [isEmpty, setEmpty] = useState(false)
  const { tell, busy, refusal } = useTell('handoff.sign')
  const isOpenTold = refusal?.code === 'packing-open'
  const { openManifest } = useManifest(handoff.handoff)

  async function sign() {
    if (busy) return
    setEmpty(pin === '' && here === 'pin')
    if (pin === '') return setHere('pin')
    const answer = await tell({
      handoff: handoff.handoff,
      courier,
      pin,
      leadSignature,
      courierSignature,
      // Told what is open, and Enter once more.
      asItIs: isOpenTold,
    })
    if (!answer.ok) {
      sayRefused(answer.refusal)
      // The PIN was right: only what is open is asked about.
      if (answer.refusal.code !== 'packing-open') setPin('')
      return
    }
    setPin('')
    sayDone(`Signed. ${courier.name} has the coolers.`)
    go('handoff', handoff.handoff)
    await openManifest()
  }
  if (!maySign)
    return (
      <Panel title="3. Sign">
        <Notice kind="info">Only the lead signs. Change person (Ctrl+L); the list is kept.</Notice>
      </Panel>
    )
  return (
    <Panel title="3. Sign">
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault()
          void sign()
        }}
      >
        <div className="handoff-courier">
          <TextEntry
            label="Courier’s name"
            value={courier.name}
            onChange={(name) => setCourier({ ...courier, name })}
            onEnter={() => setHere('organisation')}
            error={saidAt(refusal, 'courier.name')}
            autoFocus={here === 'name'}
            maxLength={80}
          />
          <TextEntry
            label="Organisation"
            value={courier.organisation}
            onChange={(organisation) => setCourier({ ...courier, organisation })}
            onEnter={() => setHere('vehicle')}
            error={saidAt(refusal, 'courier.organisation')}
            autoFocus={here === 'organisation'}
            maxLength={80}
          />
          <TextEntry
            label="Vehicle or plate"
            value={courier.vehicle}
            onChange={(vehicle) => setCourier({ ...courier, vehicle })}
            onEnter={() => setHere('signature')}
            error={saidAt(refusal, 'courier.vehicle')}
            autoFocus={here === 'vehicle'}
            maxLength={40}
          />
        </div>
        <div className="handoff-signatures">
          <SignatureEntry
            label="The courier signs"
            value={courierSignature}
            onChange={setCourierSignature}
            autoFocus={here === 'signature'}
          />
          <SignatureEntry
            label="The lead signs"
            value={leadSignature}
            onChange={setLeadSignature}
          />
        </div>
        <PinEntry
          label={`PIN of ${who?.person?.name ?? 'the lead'}`}
          value={pin}
          onChange={setPin}
          error={isEmpty ? 'Type your PIN.' : saidAt(refusal, 'pin')}
          autoFocus={here === 'pin'}
        />
        <RefusalNote refusal={saidElsewhere(refusal, fields)} />
        <div className="row">
          <Button
            kind="main"
            type="submit"
            keyHint="Enter"
            isDisabled={busy}
            autoFocus={isOpenTold}
          >
            {isOpenTold ? 'Hand over as it is' : 'Sign and hand over'}
          </Button>
        </div>
      </form>
    </Panel>
  )
}
