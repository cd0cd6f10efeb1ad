import { type ReactNode, useState } from 'react'
import type { LocalDate } from '../../shared-types/local-date.ts'
import { useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { sayDone } from '../scanner/strip.ts'
import { type SetUpErrors, commandOf, errorsOf, newDraft, steps } from './set-up-draft.ts'
import { KeptStep, LeadStep, SampledStep, StationStep, type StepProps } from './set-up-steps.tsx'
import './set-up.css'

const bodies: readonly ((props: StepProps) => ReactNode)[] = [
  StationStep,
  SampledStep,
  KeptStep,
  LeadStep,
]

/** A station from nothing, in four short steps; Enter goes on, Esc goes back. */
export function SetUp(props: { today: LocalDate; zone: string; onBack: () => void }) {
  const [draft, setDraft] = useState(() => newDraft(props.today, props.zone))
  const [place, setPlace] = useState(0)
  const [errors, setErrors] = useState<SetUpErrors>({})
  const { finish, refusal, busy } = useFinish()
  const step = steps[place]
  const Body = bodies[place]
  if (step === undefined || Body === undefined) return null
  const isLast = place === steps.length - 1

  function goOn() {
    if (step === undefined) return
    const wrong = errorsOf(draft, step)
    setErrors(wrong)
    if (Object.keys(wrong).length > 0) return
    if (isLast) void finish(draft)
    else setPlace(place + 1)
  }
  function goBack() {
    setErrors({})
    if (place === 0) props.onBack()
    else setPlace(place - 1)
  }
  return (
    <form
      className="set-up"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        goOn()
      }}
    >
      <h1>Set up a station</h1>
      <StepList place={place} />
      <div className="stack" key={place}>
        <h2>
          {place + 1} of {steps.length}: {step.title}
        </h2>
        <Body draft={draft} onChange={setDraft} errors={errors} />
      </div>
      <RefusalNote refusal={refusal} />
      <div className="row">
        <Button kind="main" type="submit" keyHint="Enter" isDisabled={busy}>
          {isLast ? 'Set up and open the day' : 'Go on'}
        </Button>
        <Button keyHint="Esc" onPress={goBack}>
          {place === 0 ? 'Back to the logs' : 'One step back'}
        </Button>
      </div>
    </form>
  )
}

function StepList(props: { place: number }) {
  return (
    <ol className="step-list" aria-label="Steps">
      {steps.map((step, place) => (
        <li
          key={step.title}
          className={place <= props.place ? 'step-reached' : undefined}
          aria-current={place === props.place ? 'step' : undefined}
        >
          <span className="numbers">{place + 1}</span> {step.title}
        </li>
      ))}
    </ol>
  )
}

/** Sets the station up; the desk signs its lead in, and the crew comes next. */
function useFinish() {
  const setUp = useTell('station.setUp')
  async function finish(draft: ReturnType<typeof newDraft>) {
    const command = commandOf(draft)
    if (command === undefined) return
    const made = await setUp.tell(command)
    if (!made.ok) return
    window.location.hash = 'station'
    sayDone(`${draft.name} is set up. Add your crew here, then open the line with F2.`)
  }
  return { finish, refusal: setUp.refusal, busy: setUp.busy }
}
