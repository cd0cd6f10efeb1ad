import { useState } from 'react'
import type { CoolerNumber } from '../../shared-types/sample-number.ts'
import { keepingWords } from '../../shared-types/station.ts'
import type { CoolerView } from '../../shared-types/views/coolers.ts'
import { useAsk } from '../desk/use-desk.ts'
import { NumberText } from '../parts/number-text.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { Ago } from '../parts/time.tsx'
import { BreakSealDialog } from './break-seal-dialog.tsx'
import { type CoolerDeed, CoolerDeeds } from './cooler-deeds.tsx'
import { CoolerStateBadge } from './cooler-state.tsx'
import { HoldUntil } from './hold-until.tsx'
import { IceDialog } from './ice-dialog.tsx'
import { KeepDialog } from './keep-dialog.tsx'
import { LoggerDialog } from './logger-dialog.tsx'
import { ReadDialog } from './read-dialog.tsx'
import { ReadingText } from './reading.tsx'
import { SealDialog } from './seal-dialog.tsx'

const titles: Record<CoolerView['state'], string> = {
  open: 'Filling',
  sealed: 'Sealed:',
  'handed-off': 'Gone:',
}

/** The cooler in front of the person: its count, its state, and what can be done with it. */
export function CoolerHead(props: { number: CoolerNumber }) {
  const { data, refusal } = useAsk('cooler', { cooler: props.number })
  const [deed, setDeed] = useState<CoolerDeed>()
  if (data === undefined) return <RefusalNote refusal={refusal} />
  const { cooler } = data
  const close = () => setDeed(undefined)
  return (
    <section className="cooler-head" aria-labelledby="cooler-head">
      <Count cooler={cooler} />
      <div className="cooler-words">
        <h1 id="cooler-head">
          {titles[cooler.state]} {cooler.name}
        </h1>
        <Facts cooler={cooler} />
      </div>
      <div className="row">
        <CoolerDeeds cooler={cooler} onPick={setDeed} />
      </div>
      {deed === 'read' && <ReadDialog cooler={cooler} onClose={close} />}
      {deed === 'logger' && <LoggerDialog cooler={cooler} onClose={close} />}
      {deed === 'ice' && <IceDialog cooler={cooler} onClose={close} />}
      {deed === 'keep' && <KeepDialog cooler={cooler} onClose={close} />}
      {deed === 'seal' && <SealDialog cooler={cooler} onClose={close} />}
      {deed === 'break' && <BreakSealDialog cooler={cooler} onClose={close} />}
    </section>
  )
}

function Count(props: { cooler: CoolerView }) {
  const { bags, capacity } = props.cooler
  return (
    <p className="cooler-count">
      <strong className="numbers">{bags}</strong>
      <span>
        {bags === 1 ? 'bag' : 'bags'}
        {capacity !== null && ` of ${capacity}`}
      </span>
    </p>
  )
}

function Facts(props: { cooler: CoolerView }) {
  const { cooler } = props
  const { lastReading } = cooler
  return (
    <>
      <p>
        <NumberText number={cooler.cooler} />, {keepingWords[cooler.keeping]}{' '}
        <CoolerStateBadge cooler={cooler} />
      </p>
      <p>
        {lastReading === null && 'No temperature read yet.'}
        {lastReading && (
          <>
            <ReadingText reading={lastReading} />, <Ago ms={lastReading.ms} /> ago
          </>
        )}
      </p>
      {cooler.bags > 0 && <HoldUntil ms={cooler.holdUntilMs} />}
    </>
  )
}
