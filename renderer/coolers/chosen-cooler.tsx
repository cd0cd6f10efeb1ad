import { useState } from 'react'
import type { CoolerNumber } from '../../shared-types/sample-number.ts'
import { keepingWords } from '../../shared-types/station.ts'
import type { BagView, CoolerView } from '../../shared-types/views/coolers.ts'
import { useAsk } from '../desk/use-desk.ts'
import { NumberText } from '../parts/number-text.tsx'
import { Panel } from '../parts/panel.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { Ago } from '../parts/time.tsx'
import { BagsInside } from './bags-inside.tsx'
import { BreakSealDialog } from './break-seal-dialog.tsx'
import { type CoolerDeed, CoolerDeeds } from './cooler-deeds.tsx'
import { HoldUntil } from './hold-until.tsx'
import { ReadDialog } from './read-dialog.tsx'
import { ReadingText } from './reading.tsx'
import { Readings } from './readings.tsx'
import { SealDialog } from './seal-dialog.tsx'
import { TakeOutDialog } from './take-out-dialog.tsx'

/** The cooler in front of the person: its count, its state, what is inside, and what can be done. */
export function ChosenCooler(props: { number: CoolerNumber }) {
  const { data, refusal } = useAsk('cooler', { cooler: props.number })
  const [deed, setDeed] = useState<CoolerDeed>()
  const [bag, setBag] = useState<BagView>()
  if (data === undefined) return <RefusalNote refusal={refusal} />
  const { cooler, bags, readings } = data
  const close = () => setDeed(undefined)
  return (
    <>
      <Panel title={cooler.name} actions={<CoolerDeeds cooler={cooler} onPick={setDeed} />}>
        <Facts cooler={cooler} />
      </Panel>
      <BagsInside
        bags={bags}
        isOpen={cooler.state === 'open'}
        onTakeOut={(picked) => {
          setBag(picked)
          setDeed('take out')
        }}
      />
      <Readings readings={readings} limits={cooler.limits} />
      {deed === 'read' && <ReadDialog cooler={cooler} onClose={close} />}
      {deed === 'seal' && <SealDialog cooler={cooler} onClose={close} />}
      {deed === 'break' && <BreakSealDialog cooler={cooler} onClose={close} />}
      {deed === 'take out' && bag && <TakeOutDialog cooler={cooler} bag={bag} onClose={close} />}
    </>
  )
}

function Facts(props: { cooler: CoolerView }) {
  const { cooler } = props
  return (
    <div className="cooler-facts">
      <p className="cooler-count">
        <strong className="numbers">{cooler.bags}</strong>
        <span>
          {cooler.bags === 1 ? 'bag' : 'bags'}
          {cooler.capacity !== null && ` of ${cooler.capacity}`}
        </span>
      </p>
      <div className="cooler-words">
        <p>
          <NumberText number={cooler.cooler} />, kept {keepingWords[cooler.keeping]}
        </p>
        <p>
          {cooler.lastReading ? (
            <>
              <ReadingText reading={cooler.lastReading} /> <Ago ms={cooler.lastReading.ms} /> ago
            </>
          ) : (
            'No temperature read yet.'
          )}
        </p>
        {cooler.bags > 0 && <HoldUntil ms={cooler.holdUntilMs} />}
      </div>
    </div>
  )
}
