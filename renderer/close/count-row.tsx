import { useState } from 'react'
import type { CloseItem } from '../../shared-types/views/close.ts'
import { useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import { CountSays } from './count-says.tsx'
import { ExplainForm } from './explain-form.tsx'
import { type Step, stepName } from './next-step.ts'
import { ScanCount } from './scan-count.tsx'

interface CountRowProps {
  item: CloseItem
  step: Step
  /** Moves on to the next thing. */
  onDone: (key: string) => void
  onExplain: (key: string) => void
}

/**
 * One thing to count. What the log expects is not shown before the count is in; afterwards the count
 * can be typed again.
 */
export function CountRow(props: CountRowProps) {
  const { item, step, onDone } = props
  const isExplaining = step.at === 'explain' && step.key === item.key
  return (
    <li className="close-row">
      <CountForm {...props} isExplaining={isExplaining} />
      {isExplaining && <ExplainForm item={item} onDone={() => onDone(item.key)} />}
    </li>
  )
}

const notANumber = 'Type the number you counted; 0 if there is none.'

function CountForm(props: CountRowProps & { isExplaining: boolean }) {
  const { item, step, onDone } = props
  const isHere = step.at === 'count' && step.key === item.key
  const [text, setText] = useState(item.counted === null ? '' : String(item.counted))
  const [shown, setShown] = useState(item.counted)
  // Counted anew, here or at another window: the field follows, and keeps the focus if it has it.
  if (shown !== item.counted) {
    setShown(item.counted)
    setText(item.counted === null ? '' : String(item.counted))
  }
  const [isEmpty, setEmpty] = useState(false)
  const [refused, setRefused] = useState('')
  const [isScanning, setScanning] = useState(false)
  const { tell, busy, refusal } = useTell('count.enter')

  async function enter() {
    setEmpty(text === '')
    if (text === '' || busy) return
    if (Number(text) === item.counted) return onDone(item.key)
    // The same absurd number typed once more is meant.
    const sure = refusal?.code === 'count-absurd' && refused === text
    setRefused(text)
    const answer = await tell({ item: item.item, counted: Number(text), sure })
    if (!answer.ok) return sayRefused(answer.refusal)
    sayDone(`${item.words}: ${text} counted.`)
    onDone(item.key)
  }
  return (
    <form
      className="close-count"
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
      {isHere ? (
        <div className="row">
          <Button type="submit" keyHint="Enter" isDisabled={busy} label={`Counted: ${item.words}`}>
            Counted
          </Button>
          {item.item.of === 'bags' && (
            <Button keyHint="Alt+B" onPress={() => setScanning(true)}>
              Scan each bag
            </Button>
          )}
        </div>
      ) : (
        <CountSays
          item={item}
          mayAsk={!props.isExplaining}
          onExplain={() => props.onExplain(item.key)}
        />
      )}
      <RefusalNote refusal={refusal} />
      {isScanning && item.item.of === 'bags' && (
        <ScanCount
          cooler={item.item.cooler}
          words={item.words}
          onClose={() => setScanning(false)}
          onDone={() => {
            setScanning(false)
            onDone(item.key)
          }}
        />
      )}
    </form>
  )
}
