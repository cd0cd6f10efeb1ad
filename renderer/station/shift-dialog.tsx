import { useState } from 'react'
import { LocalDate } from '../../shared-types/local-date.ts'
import type { PersonView } from '../../shared-types/views/people.ts'
import { useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone } from '../scanner/strip.ts'

/** When a person works on a day, in the station's local time. */
export function ShiftDialog(props: { person: PersonView; today: LocalDate; onClose: () => void }) {
  const { person, onClose } = props
  const [date, setDate] = useState<string>(props.today)
  const [from, setFrom] = useState(person.shift?.from ?? '06:00')
  const [to, setTo] = useState(person.shift?.to ?? '14:00')
  const { tell, busy, refusal } = useTell('shift.plan')
  async function submit() {
    const read = LocalDate.safeParse(date)
    if (!read.success) return
    const answer = await tell({ person: person.person, date: read.data, from, to })
    if (!answer.ok) return
    sayDone(`${person.name} works from ${from} to ${to}.`)
    onClose()
  }
  return (
    <Dialog title={`Shift of ${person.name}`} onClose={onClose}>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault()
          void submit()
        }}
      >
        <TextEntry label="Day" type="date" numbers value={date} onChange={setDate} />
        <div className="settings-columns">
          <TextEntry label="From" type="time" numbers autoFocus value={from} onChange={setFrom} />
          <TextEntry label="To" type="time" numbers value={to} onChange={setTo} />
        </div>
        <RefusalNote refusal={refusal} />
        <div>
          <Button kind="main" type="submit" keyHint="Enter" isDisabled={busy}>
            Plan the shift
          </Button>
        </div>
      </form>
    </Dialog>
  )
}
