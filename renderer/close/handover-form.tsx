import { useState } from 'react'
import type { LocalDate } from '../../shared-types/local-date.ts'
import { nothing, useAsk, useMay, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { LongEntry } from '../parts/long-entry.tsx'
import { Panel } from '../parts/panel.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { Time } from '../parts/time.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'

/** What the next lead should know: shown when the next day is opened. */
export function HandoverForm({ date }: { date: LocalDate }) {
  const mayWrite = useMay('handover.write')
  const { data } = useAsk('handover', nothing)
  const note = data?.note?.date === date ? data.note : null
  if (!data) return null
  return (
    <Panel title="Note to the next lead">
      {mayWrite && <NoteForm key={note?.ms} words={note?.words ?? ''} />}
      {note && (
        <p className="close-tries">
          {mayWrite ? 'Kept' : note.words}: {note.by}, <Time ms={note.ms} />
        </p>
      )}
    </Panel>
  )
}

function NoteForm(props: { words: string }) {
  const [words, setWords] = useState(props.words)
  const { tell, busy, refusal } = useTell('handover.write')
  async function keep() {
    const answer = await tell({ words })
    if (answer.ok) sayDone('The note is kept. It shows when the next day is opened.')
    else sayRefused(answer.refusal)
  }
  return (
    <form
      className="stack"
      onSubmit={(event) => {
        event.preventDefault()
        if (!busy) void keep()
      }}
    >
      <LongEntry
        label="What should they know?"
        hint="A broken lid, a courier who comes early, a hunter who comes back."
        maxLength={600}
        value={words}
        onChange={setWords}
      />
      <RefusalNote refusal={refusal} />
      <div className="row">
        <Button
          type="submit"
          isDisabled={busy || words.trim() === ''}
          why="write a few words first"
        >
          Keep the note
        </Button>
      </div>
    </form>
  )
}
