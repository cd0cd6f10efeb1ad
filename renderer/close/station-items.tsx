import { useState } from 'react'
import { varianceWords } from '../../shared-types/close.ts'
import type { StationDay, StationItemView } from '../../shared-types/views/station-close.ts'
import { useMay, useTell } from '../desk/use-desk.ts'
import { Badge } from '../parts/badge.tsx'
import { Button } from '../parts/button.tsx'
import { Panel } from '../parts/panel.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import { ReasonForm } from './reason-form.tsx'
import { reasonsFor } from './reasons.ts'
import { signed } from './variance-text.tsx'

/** What the desks counted, added up; what is left over all of them is explained here. */
export function StationItems(props: {
  items: readonly StationItemView[]
  day: StationDay
  /** Signed and still right: nothing is explained any more. */
  isSigned: boolean
}) {
  const [explaining, setExplaining] = useState<string>()
  return (
    <Panel title="Counted over all desks">
      <ul className="station-items">
        {props.items.map((item) => (
          <li key={item.key}>
            <ItemLine
              item={item}
              mayAsk={explaining !== item.key && !props.isSigned}
              onExplain={() => setExplaining(item.key)}
            />
            {explaining === item.key && !props.isSigned && (
              <Explain item={item} day={props.day} onDone={() => setExplaining(undefined)} />
            )}
          </li>
        ))}
      </ul>
    </Panel>
  )
}

function ItemLine(props: { item: StationItemView; mayAsk: boolean; onExplain: () => void }) {
  const { item, mayAsk, onExplain } = props
  const mayExplain = useMay('station.explain')
  const deed = item.explained ? 'Explain again' : 'Explain'
  return (
    <div className="station-item">
      <p>
        {item.words}: <b className="numbers">{item.counted}</b> counted of{' '}
        <b className="numbers">{item.expected}</b>
      </p>
      <Variance item={item} />
      {item.variance !== 0 && mayAsk && (
        <span data-explain={item.explained ? undefined : ''} tabIndex={-1}>
          <Button
            onPress={onExplain}
            isDisabled={!mayExplain}
            why="only a lead explains"
            label={`${deed}: ${item.words}`}
          >
            {deed}
          </Button>
        </span>
      )}
      <ByDesk item={item} />
    </div>
  )
}

function Variance({ item: { variance, explained, desks } }: { item: StationItemView }) {
  if (variance === 0) {
    const evened = desks.some(({ counted, expected }) => counted !== expected)
    return <Badge shape="fine">{evened ? 'evens out over the desks' : 'agrees'}</Badge>
  }
  return (
    <span className="close-variance">
      <Badge shape={explained ? 'idle' : 'now'}>
        <b className="numbers close-variance-sign">{signed(variance)}</b>
      </Badge>
      <span>
        {explained
          ? [varianceWords[explained.reason], explained.words].filter(Boolean).join(', ')
          : 'no reason yet'}
      </span>
    </span>
  )
}

/** Each desk's own count and the reasons it gave; what went between desks. */
function ByDesk({ item: { desks, between } }: { item: StationItemView }) {
  return (
    <p className="station-by-desk">
      {desks.map(({ desk, counted, expected, reasons }) => (
        <span key={desk}>
          <span className="numbers">
            {desk}: {counted} of {expected}
          </span>
          {reasons.length > 0 && ` (${reasons.join('; ')})`}
        </span>
      ))}
      {between !== 0 && (
        <span>
          between desks: <span className="numbers">{signed(between)}</span>
        </span>
      )}
    </p>
  )
}

function Explain(props: { item: StationItemView; day: StationDay; onDone: () => void }) {
  const { item, day, onDone } = props
  const { tell, busy, refusal } = useTell('station.explain')
  return (
    <ReasonForm
      about={item.words}
      step={`explain ${item.key}`}
      reasons={reasonsFor(item.item.of, item.variance)}
      given={item.explained}
      busy={busy}
      refusal={refusal}
      onKeep={async (reason, words) => {
        const { station, date } = day
        const answer = await tell({ station, date, item: item.item, reason, words })
        if (!answer.ok) return sayRefused(answer.refusal)
        sayDone(`${item.words}: ${varianceWords[reason]}.`)
        onDone()
      }}
    />
  )
}
