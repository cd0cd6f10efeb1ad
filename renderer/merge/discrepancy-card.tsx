import { useState } from 'react'
import { discrepancyWords, type SettleChoice } from '../../shared-types/discrepancy.ts'
import type { DiscrepancyView } from '../../shared-types/views/merge.ts'
import { useMay, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { Notice } from '../parts/notice.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { Time } from '../parts/time.tsx'
import { sayDone } from '../scanner/strip.ts'
import { StateBadge } from './state-badge.tsx'

/** One discrepancy: what is said, the evidence of each side, how it was settled, and settling it. */
export function DiscrepancyCard(props: { discrepancy: DiscrepancyView }) {
  const { discrepancy } = props
  return (
    <section className="discrepancy" aria-labelledby="discrepancy-title" data-keys>
      <header className="row discrepancy-head">
        <h1 id="discrepancy-title">{discrepancyWords[discrepancy.kind]}</h1>
        <StateBadge state={discrepancy.state} />
      </header>
      <p>{discrepancy.say}</p>
      <p className="discrepancy-next">{discrepancy.next}</p>
      <ol className="discrepancy-sides">
        {discrepancy.sides.map((side, at) => (
          <li key={side.key}>
            <h2>
              <span className="numbers">{at + 1}</span> {side.title}
            </h2>
            <p className="field-hint">
              {side.station ?? ''} {side.desk && <span className="numbers">{side.desk}</span>}
              {side.ms !== null && (
                <>
                  , <Time ms={side.ms} />
                </>
              )}
            </p>
            {side.lines.map((line) => (
              <p key={line}>{line}</p>
            ))}
          </li>
        ))}
      </ol>
      {discrepancy.settled.length > 0 && <Settled discrepancy={discrepancy} />}
      <SettleForm discrepancy={discrepancy} />
    </section>
  )
}

function Settled(props: { discrepancy: DiscrepancyView }) {
  const { state, settled } = props.discrepancy
  return (
    <Notice kind={state === 'settled' ? 'good' : 'warn'}>
      {state === 'settled-differently' && (
        <p>
          <strong>Settled differently.</strong> Agree on one, and settle it once more for all.
        </p>
      )}
      {settled.map(({ say, words, by, desk, ms }) => (
        <p key={`${desk} ${ms} ${say}`}>
          {say}
          {words && ` (${words})`}. {by}, <span className="numbers">{desk}</span>, <Time ms={ms} />
        </p>
      ))}
    </Notice>
  )
}

function SettleForm(props: { discrepancy: DiscrepancyView }) {
  const { id, ways, sides, state, isFollowed } = props.discrepancy
  const settle = useTell('discrepancy.settle')
  const may = useMay('discrepancy.settle')
  const [choice, setChoice] = useState<SettleChoice | null>(null)
  const [side, setSide] = useState<string | null>(null)
  const [words, setWords] = useState('')
  const way = ways.find((each) => each.choice === choice)
  async function finish() {
    if (choice === null) return
    const given = { discrepancy: id, choice, side: way?.namesSide ? side : null, words }
    const settled = await settle.tell(given)
    if (!settled.ok) return
    sayDone('Settled, and signed by this office.')
    setChoice(null)
    setSide(null)
    setWords('')
  }
  return (
    <form
      className="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        void finish()
      }}
    >
      <Choice
        label={state === 'open' ? 'Settle it' : 'Settle it anew'}
        options={ways.map(({ choice: value, words: label }, at) => ({
          value,
          label,
          key: String(at + 1),
        }))}
        value={choice}
        onChange={setChoice}
      />
      {way?.namesSide && (
        <Choice
          label="Which one"
          options={sides.map(({ key, title, station }, at) => ({
            value: key,
            label: title,
            hint: station ?? undefined,
            key: 'abcdefgh'[at],
          }))}
          value={side}
          onChange={setSide}
          error={settle.refusal?.field === 'side' ? settle.refusal.say : undefined}
        />
      )}
      <p className="field-hint">
        {isFollowed
          ? 'Counts, places and lists follow it from then on.'
          : 'It is put on record; what was recorded before stays as it is.'}
      </p>
      <TextEntry label="Why, in a few words" value={words} onChange={setWords} maxLength={200} />
      <RefusalNote refusal={settle.refusal} />
      <Button
        kind="main"
        type="submit"
        keyHint="Enter"
        isDisabled={settle.busy || choice === null || !may}
        why={may ? 'choose a way first' : 'settling is for the office lead'}
      >
        Settle
      </Button>
    </form>
  )
}
