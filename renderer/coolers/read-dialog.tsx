import { useState } from 'react'
import type { CoolerView } from '../../shared-types/views/coolers.ts'
import { useTell } from '../desk/use-desk.ts'
import { Badge } from '../parts/badge.tsx'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { Notice } from '../parts/notice.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import { DeedDialog } from '../parts/deed-dialog.tsx'
import { saidAt } from '../parts/said-at.ts'
import { TemperatureEntry } from './temperature-entry.tsx'
import { bothScales, readTemperature } from './temperature.ts'

export const notATemperature = 'That is not a temperature. Type it like 3.5, or like 38F.'

/** A temperature read off the thermometer; out of limits it stays to say what to do. */
export function ReadDialog(props: { cooler: CoolerView; onClose: () => void }) {
  const { cooler, onClose } = props
  const [text, setText] = useState('')
  const [isUnread, setUnread] = useState(false)
  const [toDo, setToDo] = useState<string>()
  const { tell, busy, refusal } = useTell('cooler.read')

  async function read(sure = false) {
    const celsius = readTemperature(text)
    setUnread(celsius === null)
    if (celsius === null) return
    const answer = await tell({ cooler: cooler.cooler, celsius, sure })
    if (!answer.ok) return sayRefused(answer.refusal)
    const { excursion, advice } = answer.value
    sayDone(`${cooler.name}: ${bothScales(celsius)}, ${excursion ? 'out of' : 'within'} limits.`)
    if (excursion) setToDo(advice)
    else onClose()
  }
  if (toDo !== undefined)
    return <OutOfLimits name={cooler.name} text={text} toDo={toDo} onClose={onClose} />
  return (
    <DeedDialog
      title={`Temperature in ${cooler.name}`}
      deed="Record the reading"
      isBusy={busy}
      refusal={refusal}
      fields={['celsius']}
      onDo={() => read()}
      onClose={onClose}
    >
      <TemperatureEntry
        value={text}
        onChange={setText}
        autoFocus
        error={isUnread ? notATemperature : saidAt(refusal, 'celsius')}
      />
      {refusal?.code === 'unit-in-doubt' && (
        <Button keyHint="Alt+K" onPress={() => void read(true)}>
          It is °C: record it so
        </Button>
      )}
    </DeedDialog>
  )
}

function OutOfLimits(props: { name: string; text: string; toDo: string; onClose: () => void }) {
  return (
    <Dialog title={`${props.name} is out of its limits`} onClose={props.onClose}>
      <Notice kind="warn">
        <p>
          <b className="numbers">{bothScales(readTemperature(props.text) ?? 0)}</b>{' '}
          <Badge shape="now">out of limits</Badge>, recorded so.
        </p>
        <p>{props.toDo}</p>
      </Notice>
      <div className="row">
        <Button kind="main" keyHint="Enter" autoFocus onPress={props.onClose}>
          Understood
        </Button>
      </div>
    </Dialog>
  )
}
