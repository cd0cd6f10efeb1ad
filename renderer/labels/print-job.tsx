import type { PrintingView, PrintJobView } from '../../shared-types/views/printing.ts'
import { useTell } from '../desk/use-desk.ts'
import { Badge } from '../parts/badge.tsx'
import { Button } from '../parts/button.tsx'
import type { ShapeKind } from '../parts/shape.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'

const stateShapes: Record<PrintJobView['state'], ShapeKind> = {
  printing: 'soon',
  stopped: 'idle',
  failed: 'now',
  done: 'fine',
}
const stateWords: Record<PrintJobView['state'], string> = {
  printing: 'printing',
  stopped: 'stopped',
  failed: 'not printed',
  done: 'printed',
}

/** How far the labels are: being made, on their way to the printer, stopped, out. */
export function PrintJob(props: { printing: PrintingView; onJam: () => void }) {
  const { making, job } = props.printing
  return (
    <>
      {making && (
        <div className="print-progress">
          <p role="status">Making the PDF…</p>
          <progress value={making.made} max={making.total} aria-label="Labels made" />
        </div>
      )}
      {job && <OnPrinter job={job} onJam={props.onJam} />}
    </>
  )
}

function OnPrinter({ job, onJam }: { job: PrintJobView; onJam: () => void }) {
  const isHalted = job.state === 'stopped' || job.state === 'failed'
  return (
    <div className="print-progress">
      <p role="status">
        <Badge shape={stateShapes[job.state]}>{stateWords[job.state]}</Badge>{' '}
        <span className="numbers">{job.out}</span> of <span className="numbers">{job.total}</span>{' '}
        labels on {job.printer}. {job.say} {job.next}
      </p>
      <div className="row">
        <progress value={job.out} max={job.total} aria-label="Labels printed" />
        {job.state === 'printing' && <Stop />}
        {isHalted && !job.unsure && <GoOn />}
        {isHalted && job.unsure && (
          <Button kind="main" onPress={onJam}>
            Scan the last good label
          </Button>
        )}
      </div>
    </div>
  )
}

function Stop() {
  const { tell, busy } = useTell('printing.stop')
  return (
    <Button keyHint="Alt+X" isDisabled={busy} onPress={() => void tell({})}>
      Stop the printer
    </Button>
  )
}

function GoOn() {
  const { tell, busy } = useTell('printing.goOn')
  async function goOn() {
    const answer = await tell({ printer: null })
    if (answer.ok) sayDone('Printing goes on.')
    else sayRefused(answer.refusal)
  }
  return (
    <Button kind="main" isDisabled={busy} onPress={() => void goOn()}>
      Go on
    </Button>
  )
}
