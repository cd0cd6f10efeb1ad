import type { HandoffNumber } from '../../shared-types/sample-number.ts'
import type { HandoffView } from '../../shared-types/views/handoff.ts'
import { Badge } from '../parts/badge.tsx'
import { Button } from '../parts/button.tsx'
import { NumberText } from '../parts/number-text.tsx'
import { Panel } from '../parts/panel.tsx'
import type { ShapeKind } from '../parts/shape.tsx'
import { Time } from '../parts/time.tsx'
import { Documents } from './documents.tsx'

const states: Record<HandoffView['state'], { shape: ShapeKind; word: string }> = {
  loading: { shape: 'soon', word: 'being loaded' },
  signed: { shape: 'fine', word: 'signed' },
  'called-off': { shape: 'idle', word: 'called off' },
}

/** Every other handoff of this log, latest first, with its documents. */
export function EarlierHandoffs(props: {
  handoffs: readonly HandoffView[]
  onShow: (handoff: HandoffNumber) => void
}) {
  const latestFirst = props.handoffs.toSorted((a, b) => b.begunMs - a.begunMs)
  if (latestFirst.length === 0) return null
  return (
    <Panel title="Other handoffs">
      <ul className="handoff-earlier">
        {latestFirst.map((handoff) => (
          <li key={handoff.handoff} className="stack">
            <div>
              <p>
                <NumberText number={handoff.handoff} />{' '}
                <Badge shape={states[handoff.state].shape}>{states[handoff.state].word}</Badge>
              </p>
              <p>
                {handoff.coolers.map(({ name }) => name).join(', ')} for {handoff.destination},{' '}
                <Time ms={handoff.signedMs ?? handoff.begunMs} />
              </p>
            </div>
            {handoff.state === 'signed' && <Documents handoff={handoff} />}
            {handoff.state === 'loading' && (
              <Button onPress={() => props.onShow(handoff.handoff)}>Go on loading</Button>
            )}
          </li>
        ))}
      </ul>
    </Panel>
  )
}
