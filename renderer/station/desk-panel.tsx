import { useState } from 'react'
import { keepingWords } from '../../shared-types/station.ts'
import type { WhoView } from '../../shared-types/views/people.ts'
import { isOpenedHere, openBoardWindow, openSecondWindow } from '../desk/second-window.ts'
import { nothing, useAsk, useMay, useTell } from '../desk/use-desk.ts'
import { Badge } from '../parts/badge.tsx'
import { Button } from '../parts/button.tsx'
import { Panel } from '../parts/panel.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { Time } from '../parts/time.tsx'
import { isSoundOn, setSound } from '../scanner/sound.ts'
import { sayDone } from '../scanner/strip.ts'

/** What is settled at this station, and what can be done with this laptop's desk. */
export function DeskPanel(props: {
  who: WhoView
  onInside: (part: 'settings' | 'safekeeping') => void
}) {
  const { who } = props
  return (
    <>
      <Panel
        title="Settings"
        actions={
          <Button keyHint="Alt+E" onPress={() => props.onInside('settings')}>
            Look or change
          </Button>
        }
      >
        <Settled who={who} />
      </Panel>
      <Panel
        title="This desk"
        actions={
          <Button keyHint="Alt+K" onPress={() => props.onInside('safekeeping')}>
            Safekeeping
          </Button>
        }
      >
        <BackupLine />
        <ClockRow nowMs={who.nowMs} />
        <div className="row">
          <SoundButton />
          {isOpenedHere() && <WindowButton />}
          {isOpenedHere() && <BoardButton />}
          <PutAwayButton />
        </div>
      </Panel>
    </>
  )
}

function Settled(props: { who: WhoView }) {
  const { settings } = props.who
  const { low, high } = settings.limits.chilled
  return (
    <p>
      {settings.units.length} harvest {settings.units.length === 1 ? 'unit' : 'units'}; samples go
      to {settings.laboratory}; {settings.holdHours} hours {keepingWords.chilled} between {low} and{' '}
      {high} °C; target wait {settings.targetWaitMinutes} min.
    </p>
  )
}

/** Whether a lost laptop would be a lost day. */
function BackupLine() {
  const backup = useAsk('backup', nothing, { everyMs: 30_000 }).data
  if (backup === undefined) return null
  const { place, last } = backup
  if (place === null)
    return (
      <p>
        <Badge shape="soon">no backup</Badge> Choose a stick or disk under Safekeeping.
      </p>
    )
  return (
    <p>
      Backup on {place.name}: {last ? <Time ms={last.atMs} /> : 'no good copy yet'}.
    </p>
  )
}

/** A clock that was set back stops the desk from writing until a lead has looked at it. */
function ClockRow(props: { nowMs: number }) {
  const mayAccept = useMay('clock.accept')
  const { tell, busy, refusal } = useTell('clock.accept')
  async function accept() {
    const answer = await tell({})
    if (answer.ok) sayDone('The clock is accepted as it stands.')
  }
  return (
    <>
      <p>
        The laptop's clock says <Time ms={props.nowMs} />. If it was set back, the desk writes
        nothing until a lead has compared it with another clock and accepts it.
      </p>
      <RefusalNote refusal={refusal} />
      <div>
        <Button
          keyHint="Alt+C"
          isDisabled={busy || !mayAccept}
          why={mayAccept ? undefined : 'a station lead does this'}
          onPress={() => void accept()}
        >
          The clock is right
        </Button>
      </div>
    </>
  )
}

function SoundButton() {
  const [isOn, setOn] = useState(isSoundOn)
  return (
    <Button
      onPress={() => {
        setSound(!isOn)
        setOn(!isOn)
      }}
    >
      {isOn ? 'Turn sounds off' : 'Turn sounds on'}
    </Button>
  )
}

function WindowButton() {
  return (
    <Button
      keyHint="Alt+T"
      onPress={() => {
        openSecondWindow()
        sayDone('A second window is open. Sign in there too.')
      }}
    >
      Open a second window
    </Button>
  )
}

function BoardButton() {
  return (
    <Button
      onPress={() => {
        openBoardWindow()
        sayDone('The board is open: move it to the screen outside.')
      }}
    >
      Open the board outside
    </Button>
  )
}

function PutAwayButton() {
  const { tell, busy } = useTell('shelf.shut')
  return (
    <Button isDisabled={busy} onPress={() => void tell({})}>
      Put this log away
    </Button>
  )
}
