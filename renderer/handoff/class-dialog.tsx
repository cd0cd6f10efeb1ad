import { useState } from 'react'
import { TransportClass, transportSources, transportWords } from '../../shared-types/transport.ts'
import type { HandoffView } from '../../shared-types/views/handoff.ts'
import { DeedDialog } from '../parts/deed-dialog.tsx'
import { saidAt } from '../parts/said-at.ts'
import { useTell } from '../desk/use-desk.ts'
import { Choice } from '../parts/choice.tsx'
import { Notice } from '../parts/notice.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'

const options = TransportClass.options.map((value) => ({ value, label: transportWords[value] }))

/** Published rules differ; the lead reads both sides and chooses with the carrier. Nothing is chosen here. */
export function ClassDialog(props: { handoff: HandoffView; onClose: () => void }) {
  const { handoff, onClose } = props
  const before = handoff.classed ?? handoff.classedBefore
  const [transport, setTransport] = useState<TransportClass | null>(
    handoff.classed?.transport ?? null,
  )
  const [agreedWith, setAgreedWith] = useState(handoff.classed?.agreedWith ?? '')
  const [citation, setCitation] = useState(before?.citation ?? '')
  const [isUnsaid, setUnsaid] = useState(false)
  const { tell, busy, refusal } = useTell('handoff.class')

  async function choose() {
    setUnsaid(transport === null)
    if (transport === null) return
    const answer = await tell({ handoff: handoff.handoff, transport, agreedWith, citation })
    if (!answer.ok) return sayRefused(answer.refusal)
    sayDone('Class for transport recorded.')
    onClose()
  }
  return (
    <DeedDialog
      title="Class for transport"
      deed="Record the choice"
      isBusy={busy}
      refusal={refusal}
      fields={['agreedWith', 'citation']}
      onDo={choose}
      onClose={onClose}
    >
      <Notice kind="info">
        <p>
          Rules and agencies class such tissue differently. Read what each says, ask the carrier,
          and choose with them.
        </p>
      </Notice>
      {TransportClass.options.map((each) => (
        <div key={each}>
          <h3>{transportWords[each]}</h3>
          <ul className="handoff-cautions">
            {transportSources[each].map(({ say, source }) => (
              <li key={say}>
                {say} <small>({source})</small>
              </li>
            ))}
          </ul>
        </div>
      ))}
      {handoff.classed === null && before && (
        <p>
          The last time to {handoff.destination}: <b>{transportWords[before.transport]}</b>, with{' '}
          {before.agreedWith} ({before.citation}).
        </p>
      )}
      <Choice
        label="Chosen with the carrier"
        options={options}
        value={transport}
        onChange={setTransport}
        error={isUnsaid ? 'Choose one: the program does not.' : undefined}
        autoFocus
      />
      <TextEntry
        label="Who at the carrier agreed"
        value={agreedWith}
        onChange={setAgreedWith}
        error={saidAt(refusal, 'agreedWith')}
        maxLength={80}
      />
      <TextEntry
        label="Rule or page it rests on"
        value={citation}
        onChange={setCitation}
        error={saidAt(refusal, 'citation')}
        maxLength={200}
      />
    </DeedDialog>
  )
}
