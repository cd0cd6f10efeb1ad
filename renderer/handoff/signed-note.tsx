import { useState } from 'react'
import { grouped } from '../../shared-types/sample-number.ts'
import type { HandoffView } from '../../shared-types/views/handoff.ts'
import { useAsk, useMay } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Notice } from '../parts/notice.tsx'
import { NumberText } from '../parts/number-text.tsx'
import { Time } from '../parts/time.tsx'
import { CorrectDialog } from './correct-dialog.tsx'
import { Documents } from './documents.tsx'

/** A handoff that is over: who has the coolers, and its documents. */
export function SignedNote(props: { handoff: HandoffView; onBegin: () => void }) {
  const { handoff, onBegin } = props
  const [isCorrecting, setCorrecting] = useState(false)
  const mayCorrect = useMay('handoff.correct')
  const bags = handoff.coolers.reduce((sum, { scanned }) => sum + (scanned?.counted ?? 0), 0)
  return (
    <>
      {handoff.state === 'signed' ? (
        <Notice kind="good">
          <p>
            <b>
              {handoff.courier?.name} has <span className="numbers">{handoff.coolers.length}</span>{' '}
              {handoff.coolers.length === 1 ? 'cooler' : 'coolers'} with{' '}
              <span className="numbers">{bags}</span> bags for {handoff.destination}.
            </b>
          </p>
          <p>
            <NumberText number={handoff.handoff} />
            {handoff.signedMs !== null && (
              <>
                , signed <Time ms={handoff.signedMs} />
              </>
            )}
            {handoff.edition > 1 && `, corrected, edition ${handoff.edition}`}
            {handoff.supplements && `, adds to ${grouped(handoff.supplements)}`}. Print two copies:
            one rides with the coolers in a dry sleeve, one stays here.
          </p>
        </Notice>
      ) : (
        <Notice kind="info">
          Handoff <NumberText number={handoff.handoff} /> was called off; its coolers stayed here.
        </Notice>
      )}
      {handoff.state === 'signed' && <Documents handoff={handoff} withKeys />}
      {handoff.digest && (
        <p className="handoff-digest">
          SHA-256 of the manifest’s data: <span className="numbers">{handoff.digest}</span>
        </p>
      )}
      <div className="row">
        {handoff.state === 'signed' && (
          <Button
            keyHint="Alt+K"
            onPress={() => setCorrecting(true)}
            isDisabled={!mayCorrect}
            why="only the lead corrects a manifest"
          >
            Correct this manifest
          </Button>
        )}
        <Button keyHint="Alt+A" onPress={onBegin}>
          Begin another handoff
        </Button>
      </div>
      {handoff.state === 'signed' && <Received handoff={handoff} />}
      {isCorrecting && <CorrectDialog handoff={handoff} onClose={() => setCorrecting(false)} />}
    </>
  )
}

/** What the laboratory or courier counted, once it came back. */
function Received(props: { handoff: HandoffView }) {
  const { data } = useAsk('receipt', { handoff: props.handoff.handoff })
  if (!data?.counted) return null
  const { counted, findings } = data
  return (
    <Notice kind={findings.length === 0 ? 'good' : 'warn'}>
      <p>
        {counted.receivedBy} counted {counted.bags} of {data.expected.length} bags,{' '}
        <Time ms={counted.ms} />, entered by {counted.enteredBy}.
      </p>
      <ul>
        {findings.map(({ say }) => (
          <li key={say}>{say}</li>
        ))}
      </ul>
    </Notice>
  )
}
