import type { CallOutput } from '../../shared-types/desk-api.ts'
import { nothing, useAsk, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Panel } from '../parts/panel.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { sayDone } from '../scanner/strip.ts'

type Logs = CallOutput<'shelf.look'>['logs']

/** Backups of logs that are damaged here or missing. */
export function BackupsFound(props: { logs: Logs }) {
  const { data } = useAsk('backup', nothing)
  const restore = useTell('backup.restore')
  const sound = props.logs.filter(({ trouble }) => trouble === null).map(({ file }) => file)
  const needed = data?.found.filter((file) => !sound.includes(file)) ?? []
  if (needed.length === 0) return null
  async function bringBack(file: string) {
    const done = await restore.tell({ file })
    if (done.ok) sayDone(`${file} is back. A damaged file of that name was set aside, not erased.`)
  }
  return (
    <Panel title={`Backups on ${data?.place?.name ?? 'the stick'}`}>
      <RefusalNote refusal={restore.refusal} />
      <ul className="log-list">
        {needed.map((file) => (
          <li key={file}>
            <span className="numbers">{file}</span>
            <Button
              label={`Bring ${file} back`}
              isDisabled={restore.busy}
              onPress={() => void bringBack(file)}
            >
              Bring back
            </Button>
          </li>
        ))}
      </ul>
    </Panel>
  )
}
