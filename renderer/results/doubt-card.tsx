import { useState } from 'react'
import {
  doubtWords,
  ResultWord,
  resultWords,
  type RowSettlement,
} from '../../shared-types/laboratory-result.ts'
import { LocalDate } from '../../shared-types/local-date.ts'
import { grouped } from '../../shared-types/sample-number.ts'
import type { DoubtView } from '../../shared-types/views/results.ts'
import { useMay, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { Panel } from '../parts/panel.tsx'
import { Pick } from '../parts/pick.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { saidAt, saidElsewhere } from '../parts/said-at.ts'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone } from '../scanner/strip.ts'

/** One row in doubt: what it says, what is wrong, and settling it. */
export function DoubtCard(props: { doubt: DoubtView; all: readonly DoubtView[] }) {
  const { doubt, all } = props
  return (
    <div className="results-card">
      <Panel title={doubtWords[doubt.doubt]}>
        <div className="stack">
          <p>{doubt.say}</p>
          <p>
            <strong>{doubt.next}</strong>
          </p>
          <AsWritten doubt={doubt} />
          <SettleForm doubt={doubt} />
          <SettleAlike doubt={doubt} all={all} />
        </div>
      </Panel>
    </div>
  )
}

function AsWritten({ doubt }: { doubt: DoubtView }) {
  const lines = [
    ['Laboratory', doubt.laboratory],
    ['Number', doubt.number],
    ['Result', doubt.said],
    ['Method', doubt.method],
    ['Test day', doubt.date],
  ] as const
  return (
    <dl className="results-written">
      {lines.map(([what, text]) => (
        <div key={what}>
          <dt>{what}</dt>
          <dd className="numbers">{text === '' ? '(empty)' : text}</dd>
        </div>
      ))}
    </dl>
  )
}

const fields = ['bag', 'word', 'tested']

function SettleForm({ doubt }: { doubt: DoubtView }) {
  const may = useMay('results.settle')
  const { tell, busy, refusal } = useTell('results.settle')
  const [settlement, setSettlement] = useState<RowSettlement | null>(null)
  const [bag, setBag] = useState(doubt.bag ? grouped(doubt.bag) : '')
  const [word, setWord] = useState<ResultWord | null>(doubt.word)
  const [tested, setTested] = useState('')
  const [words, setWords] = useState('')
  async function settle() {
    if (settlement === null || busy) return
    const day = LocalDate.safeParse(tested)
    const { file, line } = doubt
    const given = { file, line, settlement, bag, word, tested: day.data ?? null, words }
    const settled = await tell(given)
    if (settled.ok) sayDone(`Line ${line} is settled.`)
  }
  return (
    <form
      className="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        void settle()
      }}
    >
      <Choice<RowSettlement>
        label="Settle it"
        options={[
          {
            value: 'taken',
            label: doubt.canTake ? 'Take the row' : 'Put it right and take it',
            key: 't',
          },
          { value: 'left', label: 'Leave the row out', key: 'l' },
        ]}
        value={settlement}
        onChange={setSettlement}
      />
      {settlement === 'taken' && (
        <div className="results-fields">
          <TextEntry
            label="Number of the bag"
            numbers
            takesScan
            maxLength={80}
            value={bag}
            onChange={setBag}
            error={saidAt(refusal, 'bag')}
          />
          <Pick
            label="Result"
            options={ResultWord.options.map((value) => ({ value, label: resultWords[value] }))}
            value={word}
            onChange={setWord}
            error={saidAt(refusal, 'word')}
          />
          <TextEntry
            label="Test day, if the row's is wrong"
            type="date"
            numbers
            value={tested}
            onChange={setTested}
            error={saidAt(refusal, 'tested')}
          />
        </div>
      )}
      <TextEntry
        label="Why, in a few words"
        value={words}
        onChange={setWords}
        maxLength={200}
        hint="Such as: asked the laboratory by phone."
      />
      <RefusalNote refusal={saidElsewhere(refusal, fields)} />
      <div>
        <Button
          kind="main"
          type="submit"
          keyHint="Enter"
          isDisabled={busy || settlement === null || !may}
          why={may ? 'choose a way first' : 'a lead or the office does this'}
        >
          Settle this row
        </Button>
      </div>
    </form>
  )
}

/** Where many rows of one file are in doubt for one reason. */
function SettleAlike({ doubt, all }: { doubt: DoubtView; all: readonly DoubtView[] }) {
  const { tell, busy, refusal } = useTell('results.settleAll')
  const same = all.filter((each) => each.file === doubt.file && each.doubt === doubt.doubt)
  // A detection is settled by itself: nobody should leave one out among many.
  const isUrgent = same.some(({ word }) => word === 'detected' || word === 'presumptive')
  if (same.length < 2 || isUrgent) return null
  const settlement = doubt.doubt === 'unsuitable' ? 'taken' : 'left'
  async function settle() {
    const { file, doubt: of } = doubt
    const words = settlement === 'taken' ? 'as the laboratory reports' : 'left out together'
    const settled = await tell({ file, doubt: of, settlement, words })
    if (settled.ok) sayDone(`${settled.value.settled} rows are settled.`)
  }
  return (
    <>
      <RefusalNote refusal={refusal} />
      <div>
        <Button isDisabled={busy} keyHint="Alt+A" onPress={() => void settle()}>
          {settlement === 'taken' ? 'Take' : 'Leave out'} all {same.length} such rows of this file
        </Button>
      </div>
    </>
  )
}
