import { useState } from 'react'
import type { CallOutput } from '../../shared-types/desk-api.ts'
import { nothing, useAsk, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Panel } from '../parts/panel.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { ChooseFiles } from './choose-files.tsx'
import { MergeProgress } from './merge-progress.tsx'
import { MergeReport } from './merge-report.tsx'
import './merge.css'
import { OfficeForm } from './office-form.tsx'

type Merge = CallOutput<'merge.look'>

/** An office makes one record out of the logs of many stations, and takes it up. */
export function MergeScreen(props: { today: string; zone: string; onBack: () => void }) {
  // A stick may be plugged in, or a log copied into the folder, at any moment.
  const { data, refusal } = useAsk('merge.look', nothing, { everyMs: 4000 })
  const [office, setOffice] = useState<string>()
  if (office !== undefined)
    return (
      <OfficeForm
        file={office}
        today={props.today}
        zone={props.zone}
        onBack={() => setOffice(undefined)}
      />
    )
  return (
    <div className="merge">
      <header className="row merge-head">
        <div>
          <h1>Merge station logs</h1>
          <p>One record out of many. The files read are not changed; merging twice does no harm.</p>
        </div>
        <Button keyHint="Alt+B" onPress={props.onBack}>
          Back to the logs
        </Button>
      </header>
      <RefusalNote refusal={refusal} />
      {data && <MergeSteps merge={data} today={props.today} onOffice={setOffice} />}
    </div>
  )
}

function MergeSteps(props: { merge: Merge; today: string; onOffice: (file: string) => void }) {
  const { merge } = props
  const { state } = merge
  const [isAgain, setAgain] = useState(false)
  if (state.is === 'running') return <MergeProgress running={state} />
  if (state.is === 'done' && !isAgain)
    return (
      <MergeReport
        report={state.report}
        actions={
          <>
            <OpenMerged merge={merge} file={state.report.out} onOffice={props.onOffice} />
            <Button keyHint="a" onPress={() => setAgain(true)}>
              Merge more
            </Button>
          </>
        }
      />
    )
  return (
    <>
      {state.is === 'refused' && <RefusalNote refusal={state.refusal} />}
      {state.is === 'stopped' && (
        <p role="status">The merge into {state.out} was stopped. Nothing was changed.</p>
      )}
      <ChooseFiles merge={merge} today={props.today} onBegun={() => setAgain(false)} />
      <WaitingForOffice merge={merge} onOffice={props.onOffice} />
    </>
  )
}

/** What to do with a merged log: take it up if nobody has, else open it. */
function OpenMerged(props: { merge: Merge; file: string; onOffice: (file: string) => void }) {
  const open = useTell('shelf.open')
  const isTaken = props.merge.merged.some(({ file, taken }) => file === props.file && taken)
  async function openIt() {
    const answer = await open.tell({ file: props.file })
    if (answer.ok) window.location.hash = 'discrepancies'
  }
  return (
    <>
      <RefusalNote refusal={open.refusal} />
      {isTaken ? (
        <Button kind="main" keyHint="o" autoFocus onPress={() => void openIt()}>
          Open and settle
        </Button>
      ) : (
        <Button kind="main" keyHint="o" autoFocus onPress={() => props.onOffice(props.file)}>
          Set up the office
        </Button>
      )}
    </>
  )
}

/** Merged logs that nobody can sign in to yet. */
function WaitingForOffice(props: { merge: Merge; onOffice: (file: string) => void }) {
  const waiting = props.merge.merged.filter(({ taken }) => !taken)
  if (waiting.length === 0) return null
  return (
    <Panel title="Merged logs without an office">
      <ul className="merge-waiting">
        {waiting.map(({ file }) => (
          <li key={file} className="row">
            <span>{file}</span>
            <Button label={`Set up the office for ${file}`} onPress={() => props.onOffice(file)}>
              Set up the office
            </Button>
          </li>
        ))}
      </ul>
    </Panel>
  )
}
