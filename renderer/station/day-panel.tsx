import { useState } from 'react'
import { LocalDate } from '../../shared-types/local-date.ts'
import type { WhoView } from '../../shared-types/views/people.ts'
import { CarriedOver } from '../close/tomorrow.tsx'
import { nothing, useAsk, useMay, useTell } from '../desk/use-desk.ts'
import { Badge } from '../parts/badge.tsx'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { Notice } from '../parts/notice.tsx'
import { Panel } from '../parts/panel.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { formatDate } from '../parts/zoned-time.ts'
import { sayDone } from '../scanner/strip.ts'

type Day = WhoView['day']

const leadOnly = 'a station lead does this'

/** Which day is open, and the way to open or reopen one. */
export function DayPanel(props: { day: Day; today: LocalDate }) {
  const { day, today } = props
  const [task, setTask] = useState<'open' | 'reopen'>()
  const mayOpen = useMay('day.open')
  const isTodayOpen = day.state === 'open' && day.date === today
  return (
    <Panel title="The day">
      <DayWords day={day} />
      <div className="row">
        {!isTodayOpen && (
          <Button
            kind="main"
            keyHint="Alt+D"
            isDisabled={!mayOpen}
            why={mayOpen ? undefined : leadOnly}
            onPress={() => setTask('open')}
          >
            Open a day
          </Button>
        )}
        {day.state === 'closed' && (
          <Button
            keyHint="Alt+R"
            isDisabled={!mayOpen}
            why={mayOpen ? undefined : leadOnly}
            onPress={() => setTask('reopen')}
          >
            Reopen {day.date}
          </Button>
        )}
      </div>
      {task === 'open' && <OpenDay today={today} onClose={() => setTask(undefined)} />}
      {task === 'reopen' && <ReopenDay onClose={() => setTask(undefined)} />}
    </Panel>
  )
}

function DayWords(props: { day: Day }) {
  const { date, state } = props.day
  if (date === null || state === 'none') return <p>No day has been opened yet.</p>
  return (
    <p>
      {formatDate(date)}{' '}
      <Badge shape={state === 'open' ? 'fine' : 'idle'}>
        {state === 'open' ? 'open' : 'closed'}
      </Badge>
    </p>
  )
}

const count = /^\d{1,6}$/

function OpenDay(props: { today: LocalDate; onClose: () => void }) {
  const [date, setDate] = useState<string>(props.today)
  const [kits, setKits] = useState('0')
  const [labels, setLabels] = useState('0')
  const [stock, setStock] = useState('')
  const [isTried, setTried] = useState(false)
  const { tell, busy, refusal } = useTell('day.open')
  const wrong = (text: string) =>
    isTried && !count.test(text.trim()) ? 'A whole number; 0 for none.' : undefined
  async function submit() {
    setTried(true)
    const read = LocalDate.safeParse(date)
    if (!read.success || !count.test(kits.trim()) || !count.test(labels.trim())) return
    if (stock.trim() !== '' && !count.test(stock.trim())) return
    const opening = {
      date: read.data,
      kits: Number(kits),
      blankLabels: Number(labels),
      stockCounted: stock.trim() === '' ? null : Number(stock),
    }
    const answer = await tell(opening)
    if (!answer.ok) return
    sayDone(`${formatDate(read.data)} is open.`)
    props.onClose()
  }
  return (
    <Dialog title="Open a day" onClose={props.onClose}>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault()
          void submit()
        }}
      >
        <FromBefore />
        <TextEntry label="Day" type="date" numbers value={date} onChange={setDate} />
        <TextEntry
          label="Kits in stock, counted now"
          hint="Before the delivery. Leave it empty if nobody has counted."
          inputMode="numeric"
          numbers
          value={stock}
          error={stock.trim() === '' ? undefined : wrong(stock)}
          onChange={setStock}
        />
        <TextEntry
          label="Kits delivered since the last day"
          autoFocus
          inputMode="numeric"
          numbers
          value={kits}
          error={wrong(kits)}
          onChange={setKits}
        />
        <TextEntry
          label="Blank labels delivered since the last day"
          inputMode="numeric"
          numbers
          value={labels}
          error={wrong(labels)}
          onChange={setLabels}
        />
        <RefusalNote refusal={refusal} />
        <div>
          <Button kind="main" type="submit" keyHint="Enter" isDisabled={busy}>
            Open the day
          </Button>
        </div>
      </form>
    </Dialog>
  )
}

/** What the last day left: its lead's note, and what is still here. */
function FromBefore() {
  const { data } = useAsk('handover', nothing)
  if (!data) return null
  const { note, carry } = data
  return (
    <>
      {note && (
        <Notice kind="info">
          <p>
            <b>From {note.by}</b>, {formatDate(note.date)}: {note.words}
          </p>
        </Notice>
      )}
      <CarriedOver carry={carry} />
    </>
  )
}

function ReopenDay(props: { onClose: () => void }) {
  const [reason, setReason] = useState('')
  const { tell, busy, refusal } = useTell('day.reopen')
  async function submit() {
    const answer = await tell({ reason })
    if (!answer.ok) return
    sayDone('The day is open again. It must be closed and signed once more.')
    props.onClose()
  }
  return (
    <Dialog title="Reopen the closed day" onClose={props.onClose}>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault()
          void submit()
        }}
      >
        <p>The signed close stays in the log, and so does this reason.</p>
        <TextEntry label="Why" autoFocus maxLength={200} value={reason} onChange={setReason} />
        <RefusalNote refusal={refusal} />
        <div>
          <Button kind="main" type="submit" keyHint="Enter" isDisabled={busy}>
            Reopen
          </Button>
        </div>
      </form>
    </Dialog>
  )
}
