import { useState } from 'react'
import { packingSteps, transportWords } from '../../shared-types/transport.ts'
import type { HandoffView } from '../../shared-types/views/handoff.ts'
import { useMay } from '../desk/use-desk.ts'
import { Badge } from '../parts/badge.tsx'
import { Button } from '../parts/button.tsx'
import { Panel } from '../parts/panel.tsx'
import { ClassDialog } from './class-dialog.tsx'
import { PackDialog } from './pack-dialog.tsx'

/** How it is packed and classed: reminders of the published rules, answered before it leaves. */
export function Packing(props: { handoff: HandoffView }) {
  const { handoff } = props
  const { packed, classed } = handoff
  const [open, setOpen] = useState<'pack' | 'class'>()
  const mayPack = useMay('handoff.pack')
  const mayClass = useMay('handoff.class')
  const close = () => setOpen(undefined)
  const notDone = packed?.answers.filter(({ answer }) => answer === 'not-done').length ?? 0
  return (
    <Panel title="Packing and class">
      <p>
        {packed === null ? (
          <Badge shape="soon">checklist not answered</Badge>
        ) : (
          <Badge shape={notDone > 0 ? 'soon' : 'fine'}>
            {packed.answers.length} of {packingSteps.length} steps answered
            {notDone > 0 && `, ${notDone} not done`}
          </Badge>
        )}{' '}
        {classed === null ? (
          <Badge shape="soon">class not chosen</Badge>
        ) : (
          <Badge shape="fine">
            {transportWords[classed.transport]}, with {classed.agreedWith}
          </Badge>
        )}
      </p>
      <div className="row">
        <Button
          keyHint="Alt+K"
          onPress={() => setOpen('pack')}
          isDisabled={!mayPack}
          why="the crew of the station answers it"
        >
          Packing checklist
        </Button>
        <Button
          keyHint="Alt+L"
          onPress={() => setOpen('class')}
          isDisabled={!mayClass}
          why="the lead chooses with the carrier"
        >
          Class for transport
        </Button>
      </div>
      {open === 'pack' && <PackDialog handoff={handoff} onClose={close} />}
      {open === 'class' && <ClassDialog handoff={handoff} onClose={close} />}
    </Panel>
  )
}
