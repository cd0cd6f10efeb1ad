import { useState } from 'react'
import type { CallOutput } from '../../shared-types/desk-api.ts'
import { AnimalNumber } from '../../shared-types/sample-number.ts'
import type { ForecastView } from '../../shared-types/views/forecast.ts'
import { go, usePlace } from '../desk/place.ts'
import { nothing, useAsk } from '../desk/use-desk.ts'
import { useNow } from '../desk/use-now.ts'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { AheadDialog } from './ahead-dialog.tsx'
import { AssignDialog } from './assign-dialog.tsx'
import { CrewPanel } from './crew-panel.tsx'
import './line-screen.css'
import { NeedsBand } from './needs-band.tsx'
import { ReasonDialog, type ReasonedCommand } from './reason-dialog.tsx'
import { StoryDialog } from './story-dialog.tsx'
import { TotalsStrip } from './totals-strip.tsx'
import { useLineScan } from './use-line-scan.ts'
import { orderCrew } from './crew.ts'
import { useFirstFocus, useRoving } from '../parts/use-roving.ts'
import { WaitingPanel } from './waiting-panel.tsx'

type Line = CallOutput<'line'>

/** What is being done about one animal. */
export type LineTask = {
  readonly is: 'assign' | 'story' | ReasonedCommand
  readonly animal: AnimalNumber
}

/** Where the lead lives all day: who waits longest, who is free, who runs out of kits. */
export function LineScreen() {
  const { data, refusal } = useAsk('line', nothing, { everyMs: 30_000 })
  if (data === undefined)
    return (
      <div className="line">
        <RefusalNote refusal={refusal} />
      </div>
    )
  return <LineDay line={data} />
}

function LineDay(props: { line: Line }) {
  const { line } = props
  const now = useNow()
  const [task, setTask] = useState<LineTask>()
  const waiting = useRoving(line.waiting.map((animal) => animal.animal))
  const crew = useRoving(orderCrew(line.crew).map((member) => member.person))
  const forecast = useAsk('forecast', nothing, { everyMs: 30_000 }).data
  const [isAheadOpen, setAheadOpen] = useState(false)
  useLineScan({ line, waiting, crew })
  useFirstFocus(waiting.chosen === undefined ? crew : waiting)
  return (
    <div className="line">
      <h1 className="unseen">The line</h1>
      <NeedsBand needs={needsOf(line, forecast)} />
      <div className="line-sides">
        <WaitingPanel
          line={line}
          now={now}
          forecast={forecast}
          roving={waiting}
          other={crew}
          onTask={setTask}
          onAhead={() => setAheadOpen(true)}
        />
        <CrewPanel line={line} now={now} roving={crew} other={waiting} onTask={setTask} />
      </div>
      <TotalsStrip line={line} forecast={forecast} />
      <Task line={line} task={task} onClose={() => setTask(undefined)} />
      <VisitedStory />
      {isAheadOpen && <AheadDialog forecast={forecast} onClose={() => setAheadOpen(false)} />}
    </div>
  )
}

/** What the line needs and what stands in the way of its forecasts, each told once. */
function needsOf(line: Line, forecast: ForecastView | undefined): Line['needs'] {
  const isEmptyShift = line.needs.some(({ code }) => code === 'nobody-on-duty')
  const obstacles = (forecast?.obstacles ?? []).filter(
    ({ code }) => !(isEmptyShift && code === 'nobody-on-shift'),
  )
  return [...obstacles, ...line.needs]
}

function Task(props: { line: Line; task: LineTask | undefined; onClose: () => void }) {
  const { line, task, onClose } = props
  if (task === undefined) return null
  if (task.is === 'story') return <StoryDialog animal={task.animal} onClose={onClose} />
  if (task.is !== 'assign')
    return <ReasonDialog command={task.is} animal={task.animal} onClose={onClose} />
  const animal = [...line.waiting, ...line.working].find((each) => each.animal === task.animal)
  return animal && <AssignDialog animal={animal} line={line} onClose={onClose} />
}

/** The story somebody came here for, from the find box or a scan. */
function VisitedStory() {
  const { number } = usePlace()
  const animal = AnimalNumber.safeParse(number)
  return animal.success && <StoryDialog animal={animal.data} onClose={() => go('line')} />
}
