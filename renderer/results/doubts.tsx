import { doubtWords } from '../../shared-types/laboratory-result.ts'
import type { DoubtView } from '../../shared-types/views/results.ts'
import { nothing, useAsk } from '../desk/use-desk.ts'
import { Empty } from '../parts/empty.tsx'
import { Panel } from '../parts/panel.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { useFirstFocus, useRoving } from '../parts/use-roving.ts'
import { DoubtCard } from './doubt-card.tsx'
import { WordBadge } from './word-badge.tsx'

const keyOf = ({ file, line }: DoubtView) => `${file} ${line}`

/** Rows that wait for a person, detections first. */
export function Doubts() {
  const { data, refusal } = useAsk('results.doubts', nothing)
  if (data === undefined) return <RefusalNote refusal={refusal} />
  return <DoubtList doubts={data.doubts} />
}

function DoubtList({ doubts }: { doubts: readonly DoubtView[] }) {
  const roving = useRoving(doubts.map(keyOf))
  useFirstFocus(roving)
  const shown = doubts.find((each) => keyOf(each) === roving.chosen)
  return (
    <div className="results-doubts">
      <Panel title="Rows in doubt" count={doubts.length}>
        {doubts.length === 0 && (
          <Empty say="No row waits for a person." next="Read the next file in when it comes." />
        )}
        <ul aria-label="Rows in doubt" className="results-list">
          {doubts.map((each) => (
            <li key={keyOf(each)}>
              <button
                {...roving.rowProps(keyOf(each))}
                type="button"
                className={`results-row${each === shown ? ' results-row-shown' : ''}`}
                aria-current={each === shown}
                onClick={() => roving.focus(keyOf(each))}
              >
                <span>
                  <strong>{doubtWords[each.doubt]}</strong>
                  <small>
                    {each.fileName}, line <span className="numbers">{each.line}</span>
                  </small>
                </span>
                {each.word && <WordBadge word={each.word} />}
              </button>
            </li>
          ))}
        </ul>
      </Panel>
      {shown && <DoubtCard key={keyOf(shown)} doubt={shown} all={doubts} />}
    </div>
  )
}
