import type { HandoffView } from '../../shared-types/views/handoff.ts'
import { Button } from '../parts/button.tsx'
import { Notice } from '../parts/notice.tsx'
import { NumberText } from '../parts/number-text.tsx'
import { Time } from '../parts/time.tsx'
import { Documents } from './documents.tsx'

/** A handoff that is over: who has the coolers, and its documents. */
export function SignedNote(props: { handoff: HandoffView; onBegin: () => void }) {
  const { handoff, onBegin } = props
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
            . Print two copies: one rides with the coolers in a dry sleeve, one stays here.
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
        <Button keyHint="Alt+A" onPress={onBegin}>
          Begin another handoff
        </Button>
      </div>
    </>
  )
}
