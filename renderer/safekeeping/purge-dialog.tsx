import { useState } from 'react'
import type { CallOutput } from '../../shared-types/desk-api.ts'
import { LocalDate } from '../../shared-types/local-date.ts'
import { nothing, useAsk, useTell, useWho } from '../desk/use-desk.ts'
import { useFetch } from '../desk/use-fetch.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { Notice } from '../parts/notice.tsx'
import { openPdf } from '../parts/pdf.ts'
import { PinEntry } from '../parts/pin-entry.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'

/** Erases contacts of past days once results are told, and shows that the log is still whole. */
export function PurgeDialog({ onClose }: { onClose: () => void }) {
  const today = useWho()?.today ?? ''
  const [upTo, setUpTo] = useState<string>(today)
  const [pin, setPin] = useState('')
  const [isSure, setSure] = useState(false)
  const [done, setDone] = useState<CallOutput<'contacts.purge'>>()
  const { tell, busy, refusal } = useTell('contacts.purge')
  const date = LocalDate.safeParse(upTo)
  async function submit() {
    if (!date.success) return
    const purged = await tell({ upTo: date.data, pin, sure: isSure })
    setPin('')
    if (purged.ok) setDone(purged.value)
  }
  if (done)
    return (
      <Dialog title="Contacts erased" onClose={onClose}>
        <Proof done={done} />
      </Dialog>
    )
  return (
    <Dialog title="Erase contacts" onClose={onClose}>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault()
          void submit()
        }}
      >
        <p>
          Only when every result up to that day has been told: afterwards nobody at this desk can
          reach those hunters. This cannot be taken back.
        </p>
        <TextEntry
          label="Erase up to and with the day"
          type="date"
          autoFocus
          numbers
          value={upTo}
          error={date.success ? undefined : 'Choose a day.'}
          onChange={setUpTo}
        />
        <PinEntry label="Your PIN" value={pin} onChange={setPin} />
        <RefusalNote refusal={refusal} />
        {refusal?.code === 'hunters-wait' && (
          <label className="row">
            <input
              type="checkbox"
              checked={isSure}
              onChange={(event) => setSure(event.target.checked)}
            />
            Erase them all the same: these hunters cannot be reached afterwards
          </label>
        )}
        <div>
          <Button kind="danger" type="submit" keyHint="Enter" isDisabled={busy}>
            {busy ? 'Erasing and checking…' : 'Erase for good'}
          </Button>
        </div>
      </form>
    </Dialog>
  )
}

function Proof({ done }: { done: CallOutput<'contacts.purge'> }) {
  const { contacts, clean, backup, whole, entries } = done
  return (
    <div className="stack">
      <Notice kind={whole && clean ? 'good' : 'warn'}>
        {contacts} contacts erased. The log {whole ? 'still verifies' : 'does NOT verify'}:{' '}
        {entries} entries checked, none taken out.
      </Notice>
      {!clean && (
        <p>Traces may lie in the file beside the log until Duskline is closed: close it.</p>
      )}
      {backup === false && (
        <Notice kind="warn">
          The backup still holds them: plug its disk in and make a new backup.
        </Notice>
      )}
      <Certificate />
      <p>Copies made by hand, moved logs and old sticks still hold them: erase those as well.</p>
    </div>
  )
}

/** The paper that says so, for whoever must answer for it. */
function Certificate() {
  const latest = useAsk('retention', nothing).data?.purges[0]
  const { fetch, busy, refusal } = useFetch('retention.certificate')
  return (
    <>
      <RefusalNote refusal={refusal} />
      <div>
        <Button
          keyHint="Alt+C"
          isDisabled={busy || latest === undefined}
          why="the certificate is not ready yet"
          onPress={() => latest && void fetch({ entry: latest.entry }, openPdf)}
        >
          Certificate (PDF)
        </Button>
      </div>
    </>
  )
}
