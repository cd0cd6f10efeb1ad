import { useState } from 'react'
import { grouped } from '../../shared-types/sample-number.ts'
import type { JamView } from '../../shared-types/views/printing.ts'
import { useAsk, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { NumberEntry } from '../parts/number-entry.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { useScan } from '../scanner/scans.ts'
import { sayDone } from '../scanner/strip.ts'
import { takeLabels } from './hand-over.ts'

/** After a jam: which label came out last, how many are ruined, and the rest from there on. */
export function JamDialog(props: { onClose: () => void }) {
  const [last, setLast] = useState<string | null>()
  const jam = useAsk('labels.jam', { last: last ?? null }, { enabled: last !== undefined })
  useScan((text) => setLast(text))
  return (
    <Dialog title="Go on after a jam" onClose={props.onClose}>
      <p>
        Clear the printer. Scan the last label that came out good; the desk then prints from the
        next one on, and no number twice.
      </p>
      <NumberEntry label="The last good label" onNumber={setLast} autoFocus />
      <div className="row">
        <Button keyHint="Alt+N" onPress={() => setLast(null)}>
          Not one came out good
        </Button>
      </div>
      <RefusalNote refusal={jam.refusal} />
      {last !== undefined && jam.data && !jam.refusal && (
        <Rest key={jam.data.last ?? 'none'} jam={jam.data} onClose={props.onClose} />
      )}
    </Dialog>
  )
}

function Rest({ jam, onClose }: { jam: JamView; onClose: () => void }) {
  const [good, setGood] = useState(jam.last === null ? 0 : 1)
  const [ruined, setRuined] = useState('0')
  const [error, setError] = useState<string>()
  const { tell, busy, refusal } = useTell('labels.goOn')
  const strip = stripOptions(jam)
  async function goOn() {
    const count = /^\d{1,3}$/.test(ruined.trim()) ? Number(ruined) : null
    setError(count === null ? 'Type how many, in digits; 0 for none.' : undefined)
    if (count === null) return
    const answer = await tell({ last: jam.last, good, ruined: count })
    if (!answer.ok) return
    const { labels, again } = answer.value
    const reprints = again === 0 ? '' : ` ${again} of them reprints: destroy the ruined ones.`
    sayDone(`${labels} labels go on.${reprints} ${takeLabels(answer.value)}`)
    onClose()
  }
  return (
    <form
      className="jam"
      onSubmit={(event) => {
        event.preventDefault()
        void goOn()
      }}
    >
      {strip.length > 1 && (
        <Choice
          label="Which of these was the last good one?"
          options={strip}
          value={String(good)}
          onChange={(value) => setGood(Number(value))}
        />
      )}
      <TextEntry
        label="How many came out ruined after it"
        hint="torn, smeared or stuck together; they are void and printed once more, marked as reprints"
        value={ruined}
        onChange={setRuined}
        inputMode="numeric"
        maxLength={3}
        numbers
        error={error}
        autoFocus
      />
      <p role="status">
        <span className="numbers">{Math.max(0, jam.left - good)}</span> of{' '}
        <span className="numbers">{jam.total}</span> labels are left
        {nextWords(jam, good)}
      </p>
      <RefusalNote refusal={refusal} />
      <div className="row">
        <Button type="submit" kind="main" keyHint="Enter" isDisabled={busy} why="printing">
          Print the rest
        </Button>
      </div>
    </form>
  )
}

/** The labels that carry the scanned number: of these only the person can say which was the last. */
function stripOptions({ ahead, last }: JamView) {
  const strip = ahead.findLastIndex(({ number }) => number === last)
  return ahead.slice(0, strip + 1).map(({ words }, place) => ({
    value: String(place + 1),
    label: words,
    key: String(place + 1),
  }))
}

function nextWords({ ahead }: JamView, good: number): string {
  const next = ahead[good]
  return next ? `; the next is the ${next.words} (${grouped(next.number)}).` : '.'
}
