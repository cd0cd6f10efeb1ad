import type { MergeStateView } from '../../shared-types/views/merge.ts'
import { useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Panel } from '../parts/panel.tsx'

type Running = Extract<MergeStateView, { is: 'running' }>

const words: Record<Running['doing'], string> = {
  reading: 'Reading and checking',
  folding: 'Putting the record together',
  finishing: 'Writing it to the disk',
}

/** How far the merge is; it can be stopped at any moment, and then nothing was changed. */
export function MergeProgress(props: { running: Running }) {
  const cancel = useTell('merge.cancel')
  const { out, doing, file, share } = props.running
  const percent = Math.floor(share * 100)
  return (
    <Panel title={`Merging into ${out}`}>
      <div className="stack">
        <p>
          {words[doing]} {file}
        </p>
        <progress className="merge-bar" aria-label="Merged so far" max={100} value={percent} />
        <p className="numbers" aria-hidden="true">
          {percent} %
        </p>
        <Button
          kind="danger"
          keyHint="c"
          autoFocus
          isDisabled={cancel.busy}
          onPress={() => void cancel.tell({})}
        >
          Cancel: leave everything as it was
        </Button>
      </div>
    </Panel>
  )
}
