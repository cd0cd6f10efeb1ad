import { useState } from 'react'
import type { CloseItem } from '../../shared-types/views/close.ts'
import { useMay, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone } from '../scanner/strip.ts'
import { ExplainForm } from './explain-form.tsx'
import { type Step, isUnexplained, stepName } from './next-step.ts'
import { VarianceText } from './variance-text.tsx'

/**
 * One thing to count. What the log expects is not shown before the count is in; afterwards the count
 * can be typed again. `onDone` moves on to the next thing.
 */
export function CountRow(props: {
  item: CloseItem
  step: Step
  onDone: (key: string) => void
  onExplain: (key: string) => void
}) {
  const { item, step, onDone } = props
  const isExplaining = step.at === 'explain' && step.key === item.key
  const mayExplain = useMay('variance.explain')
  return (
    <li className="count-row">
      <CountForm
        key={item.counted}
        item={item}
        isHere={step.at === 'count' && step.key === item.key}
        onDone={onDone}
      />
      <div className="count-says">
        <VarianceText item={item} />
        {item.variance !== null && item.variance !== 0 && !isExplaining && (
          <Button
            onPress={() => props.onExplain(item.key)}
            isDisabled={!mayExplain}
            why="only the lead explains"
            label={`${isUnexplained(item) ? 'Explain' : 'Explain again'}: ${item.words}`}
          >
            {isUnexplained(item) ? 'Explain' : 'Explain again'}
          </Button>
        )}
      </div>
      {isExplaining && <ExplainForm item={item} onDone={() => onDone(item.key)} />}
    </li>
  )
}

const notANumber = 'Type the number you counted; 0 if there is none.'

function CountForm(props: { item: CloseItem; isHere: boolean; onDone: (key: string) => void }) {
  const { item, isHere, onDone } = props
  const [text, setText] = useState(item.counted === null ? '' : String(item.counted))
  const [isEmpty, setEmpty] = useState(false)
  const { tell, busy, refusal } = useTell('count.enter')

  async function enter() {
    setEmpty(text === '')
    if (text === '' || busy) return
    if (Number(text) === item.counted) return onDone(item.key)
    const answer = await tell({ item: item.item, counted: Number(text) })
    if (!answer.ok) return
    sayDone(`${item.words}: ${text} counted.`)
    onDone(item.key)
  }
  return (
    <form
      className="count-form"
      data-step={stepName({ at: 'count', key: item.key })}
      onSubmit={(event) => {
        event.preventDefault()
        void enter()
      }}
    >
      <TextEntry
        label={item.words}
        value={text}
        onChange={(typed) => setText(typed.replace(/\D/g, ''))}
        error={isEmpty ? notANumber : undefined}
        autoFocus={isHere}
        inputMode="numeric"
        numbers
        maxLength={7}
      />
      {isHere && (
        <Button type="submit" keyHint="Enter" isDisabled={busy}>
          Counted
        </Button>
      )}
      <RefusalNote refusal={refusal} />
    </form>
  )
}
