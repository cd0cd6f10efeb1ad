import { useState } from 'react'
import { discrepancyWords } from '../../shared-types/discrepancy.ts'
import type { DiscrepancyView } from '../../shared-types/views/merge.ts'
import { nothing, useAsk, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Empty } from '../parts/empty.tsx'
import { Panel } from '../parts/panel.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { useFirstFocus, useRoving } from '../parts/use-roving.ts'
import { DiscrepancyCard } from './discrepancy-card.tsx'
import { FindAnimal } from './find-animal.tsx'
import './merge.css'
import { StateBadge } from './state-badge.tsx'

const order: Record<DiscrepancyView['state'], number> = {
  'settled-differently': 0,
  open: 1,
  settled: 2,
}

/** What the merged record cannot settle by itself, what is not settled first; and any animal of it. */
export function DiscrepanciesScreen() {
  const { data, refusal } = useAsk('discrepancies', nothing)
  const more = useTell('shelf.shut')
  const all = (data?.discrepancies ?? []).toSorted((a, b) => order[a.state] - order[b.state])
  const [picked, setPicked] = useState<string>()
  const roving = useRoving(all.map(({ id }) => id))
  useFirstFocus(roving)
  const shown = all.find(({ id }) => id === (picked ?? roving.chosen)) ?? all[0]
  const left = all.filter(({ state }) => state !== 'settled').length
  return (
    <div className="discrepancies">
      <div className="discrepancies-side">
        <Panel title="Discrepancies" note={`${left} of ${all.length} to settle`}>
          <RefusalNote refusal={refusal ?? more.refusal} />
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
