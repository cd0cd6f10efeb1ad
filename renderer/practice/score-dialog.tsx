import { fill } from '../../shared-types/fill.ts'
import type { LivePracticeView, ScoreLine } from '../../shared-types/views/practice.ts'
import { nothing, useAsk, useTell } from '../desk/use-desk.ts'
import { Badge } from '../parts/badge.tsx'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { Time } from '../parts/time.tsx'
import { lineWords, practiceWords as words } from './words.ts'

/** The score so far: every point lost with the entry of the log that shows it. */
export function ScoreDialog(props: { live: LivePracticeView; onClose: () => void }) {
  const { live } = props
  const { data, refusal } = useAsk('practice.score', nothing)
  const { tell, busy } = useTell('practice.end')
  const title = data ? fill(words.scoreTitle, data) : words.score
  const lost = data?.lines.filter(({ points }) => points > 0) ?? []
  const good = data?.lines.filter(({ points }) => points === 0) ?? []
  return (
    <Dialog title={title} onClose={props.onClose} isSide>
      <RefusalNote refusal={refusal} />
      <p className="numbers">{fill(words.scoreAfter, live)}</p>
      <p>{words.scoreAbout}</p>
      {!live.isOver && (
        <Button kind="main" keyHint="Alt+Q" isDisabled={busy} onPress={() => void tell({})}>
          {words.end}
        </Button>
      )}
      <Lines title={words.lostHead} lines={lost} />
      {lost.length === 0 && <p>{words.nothingLost}</p>}
      {good.length > 0 && <Lines title={words.goodHead} lines={good} />}
    </Dialog>
  )
}

function Lines(props: { title: string; lines: readonly ScoreLine[] }) {
  return (
    <section aria-label={props.title}>
      <h3>{props.title}</h3>
      <ul className="score-lines">
        {props.lines.map((line, place) => (
          <li key={`${place} ${line.say}`}>
            <strong className="numbers score-points">
              {line.points > 0 ? fill(words.lost, line) : words.good}
            </strong>
            <div>
              <p>
                <Badge shape={line.points > 0 ? 'now' : 'fine'}>{lineWords[line.is]}</Badge>{' '}
                {line.say}
              </p>
              <p className="field-hint">
                {line.entry ? (
                  <>
                    <Time ms={line.entry.ms} />: {fill(words.entry, line.entry)}
                  </>
                ) : (
                  words.noEntry
                )}
              </p>
            </div>
          </li>
        ))}
      </ul>
    </section>
  )
}
