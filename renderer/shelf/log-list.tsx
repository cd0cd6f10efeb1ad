import { useState } from 'react'
import type { CallOutput } from '../../shared-types/desk-api.ts'
import { useTell } from '../desk/use-desk.ts'
import { Badge } from '../parts/badge.tsx'
import { Button } from '../parts/button.tsx'
import { Panel } from '../parts/panel.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { formatTime } from '../parts/zoned-time.ts'
import { TakeOverDialog } from './take-over-dialog.tsx'

/** Refusals after which a lead may stand for it that this laptop goes on. */
const elsewhere = ['lives-elsewhere', 'moved-away']

type Shelf = CallOutput<'shelf.look'>
type Log = Shelf['logs'][number]

/** The logs of this folder, each with the key that opens it or what keeps it shut. */
export function LogList(props: { shelf: Shelf }) {
  const open = useTell('shelf.open')
  const [asked, setAsked] = useState('')
  const [isTakingOver, setTakingOver] = useState(false)
  const isElsewhere = elsewhere.includes(open.refusal?.code ?? '')
  function openLog(file: string) {
    setAsked(file)
    void open.tell({ file })
  }
  return (
    <Panel title="Logs on this laptop">
      <RefusalNote refusal={open.refusal} />
      {isElsewhere && (
        <div>
          <Button onPress={() => setTakingOver(true)}>Take this desk over here</Button>
        </div>
      )}
      {isTakingOver && <TakeOverDialog file={asked} onClose={() => setTakingOver(false)} />}
      <ul className="log-list">
        {props.shelf.logs.map((log, place) => (
          <li key={log.file}>
            <LogFacts log={log} zone={props.shelf.zone} />
            <Button
              keyHint={place < 9 ? String(place + 1) : undefined}
              label={`Open ${log.name}`}
              isDisabled={open.busy || log.trouble !== null}
              onPress={() => openLog(log.file)}
            >
              Open
            </Button>
          </li>
        ))}
      </ul>
    </Panel>
  )
}

function LogFacts(props: { log: Log; zone: string }) {
  const { log, zone } = props
  return (
    <div>
      <p>
        <strong>{log.name}</strong> {log.practice && <Badge shape="soon">practice</Badge>}
      </p>
      <p className="field-hint">
        <span className="numbers">{log.desk ?? log.file}</span>, {log.entries} entries
        {log.lastMs !== null && `, last ${formatTime(log.lastMs, zone)}`}
      </p>
      {log.trouble !== null && (
        <p>
          <Badge shape="now">cannot be opened</Badge> {log.trouble}
        </p>
      )}
    </div>
  )
}
