import { useState } from 'react'
import { discrepancyWords } from '../../shared-types/discrepancy.ts'
import { useAsk, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Empty } from '../parts/empty.tsx'
import { Notice } from '../parts/notice.tsx'
import { Panel } from '../parts/panel.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { useFirstFocus, useRoving } from '../parts/use-roving.ts'
import { DiscrepancyCard } from './discrepancy-card.tsx'
import { FindAnimal } from './find-animal.tsx'
import './merge.css'
import { StateBadge } from './state-badge.tsx'

/** So many at a time: a season may have thousands. */
const atOnce = 100

/** What the merged record cannot settle by itself, what is not settled first; and any animal of it. */
export function DiscrepanciesScreen() {
  const [from, setFrom] = useState(0)
  const { data, refusal } = useAsk('discrepancies', { from, count: atOnce })
  const more = useTell('shelf.shut')
  const all = data?.discrepancies ?? []
  const [picked, setPicked] = useState<string>()
  const roving = useRoving(all.map(({ id }) => id))
  useFirstFocus(roving)
  const shown = all.find(({ id }) => id === (picked ?? roving.chosen)) ?? all[0]
  return (
    <div className="discrepancies">
      <div className="discrepancies-side">
        <Panel
          title="Discrepancies"
          note={
            data &&
            `${data.unsettled.toLocaleString('en')} of ${data.all.toLocaleString('en')} to settle`
          }
        >
          <RefusalNote refusal={refusal ?? more.refusal} />
          {!data && !refusal && (
            <Notice kind="info">
              The record is being looked through. A whole season takes half a minute.
            </Notice>
          )}
          {data && all.length === 0 && (
            <Empty say="Nothing is in dispute." next="Merge more logs when they come." />
          )}
          <ul className="discrepancy-list" aria-label="Discrepancies">
            {all.map((each) => (
              <li key={each.id}>
                <button
                  {...roving.rowProps(each.id)}
                  type="button"
                  className={`discrepancy-row${each.id === shown?.id ? ' discrepancy-row-shown' : ''}`}
                  aria-current={each.id === shown?.id}
                  onClick={() => setPicked(each.id)}
                >
                  <span>
                    <strong>{discrepancyWords[each.kind]}</strong>
                    <span className="discrepancy-row-say">{each.say}</span>
                  </span>
                  <StateBadge state={each.state} />
                </button>
              </li>
            ))}
          </ul>
          {data && data.all > atOnce && <Pages from={from} all={data.all} onFrom={setFrom} />}
        </Panel>
        <Button keyHint="Alt+M" isDisabled={more.busy} onPress={() => void more.tell({})}>
          Put the record away, to merge more
        </Button>
      </div>
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- scrolls without holding anything to press */}
      <div className="discrepancies-main" role="group" aria-label="Evidence" tabIndex={0}>
        {shown && <DiscrepancyCard key={shown.id} discrepancy={shown} />}
        {(data?.earlier.length ?? 0) > 0 && (
          <Panel title="Settled before more came in" count={data?.earlier.length}>
            <ul>
              {data?.earlier.map(({ say, by, words }) => (
                <li key={`${say} ${by} ${words}`}>
                  {say} {words && `(${words})`} by {by}
                </li>
              ))}
            </ul>
          </Panel>
        )}
        <FindAnimal />
      </div>
    </div>
  )
}

function Pages(props: { from: number; all: number; onFrom: (from: number) => void }) {
  const { from, all, onFrom } = props
  const to = Math.min(all, from + atOnce)
  return (
    <div className="row">
      <Button
        keyHint="Alt+B"
        isDisabled={from === 0}
        why="these are the first"
        onPress={() => onFrom(Math.max(0, from - atOnce))}
      >
        Before
      </Button>
      <span className="numbers">
        {(from + 1).toLocaleString('en')} to {to.toLocaleString('en')}
      </span>
      <Button
        keyHint="Alt+J"
        isDisabled={to >= all}
        why="these are the last"
        onPress={() => onFrom(from + atOnce)}
      >
        Next
      </Button>
    </div>
  )
}
