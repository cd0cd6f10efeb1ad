import { type FormEvent, useEffect, useRef, useState } from 'react'
import type { CallInput, CallOutput } from '../../shared-types/desk-api.ts'
import { readSampleNumber } from '../../shared-types/sample-number.ts'
import type { WhoView } from '../../shared-types/views/people.ts'
import { useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { useKey } from '../scanner/keys.ts'
import { useScan } from '../scanner/scans.ts'
import { playSound } from '../scanner/sound.ts'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import { AnimalFields } from './animal-fields.tsx'
import { ContactFields } from './contact-fields.tsx'
import type { Step } from './draft.ts'
import { HeadFields } from './head-fields.tsx'
import type { DraftHold } from './kept-draft.ts'
import { PlaceFields } from './place-fields.tsx'
import { type Missing, checkInOf, firstStep, stepOfField } from './questions.ts'
import { StepHelp } from './step-help.tsx'
import { focusStep, moveOn, stepOf } from './stops.tsx'
import { UnitNeed } from './unit-need.tsx'
import { WhoFields } from './who-fields.tsx'

/** What the desk answered, and the facts it took. */
export interface CheckedIn extends CallOutput<'animal.checkIn'> {
  readonly facts: CallInput<'animal.checkIn'>['facts']
}

/** The questions about one animal, answered by keyboard and scanner. */
export function CheckInForm(props: {
  who: WhoView
  hold: DraftHold
  onCheckedIn: (done: CheckedIn) => void
}) {
  const { who, hold } = props
  const { draft, change } = hold
  const { units, locationNeed } = who.settings
  const form = useRef<HTMLFormElement>(null)
  const [step, setStep] = useState<Step>()
  const { missing, refusal, busy, submit } = useCheckIn(hold, units, props.onCheckedIn)
  useKey('Ctrl+ENTER', form, () => form.current?.requestSubmit())
  useScanFor(hold)
  useEffect(() => {
    const first = firstStep(missing)
    if (form.current && first) focusStep(form.current, first)
  }, [missing])
  const asking = { draft, change, missing, units, today: who.today }
  return (
    <form
      ref={form}
      className="check-in-form"
      noValidate
      aria-label="Check in an animal"
      onSubmit={submit}
    >
      <div
        role="presentation"
        className="questions"
        onKeyDown={moveOn}
        onFocus={(event) => setStep(stepOf(event.target))}
      >
        <WhoFields {...asking} />
        <AnimalFields {...asking} />
        <HeadFields {...asking} />
        <PlaceFields {...asking} />
        <ContactFields {...asking} />
      </div>
      <div className="check-in-side">
        <StepHelp step={step} age={draft.age} locationNeed={locationNeed} />
        <UnitNeed unit={draft.by === 'not-known' ? '' : draft.unit} species={draft.species} />
        <RefusalNote refusal={stepOfField(refusal?.field) ? undefined : refusal} />
        <Button kind="main" type="submit" keyHint="F12" isDisabled={busy} why="being written">
          Check in
        </Button>
      </div>
    </form>
  )
}

/** Checks the animal in, or says which questions are still open. */
function useCheckIn(
  { draft }: DraftHold,
  units: WhoView['settings']['units'],
  onCheckedIn: (done: CheckedIn) => void,
) {
  const { tell, busy, refusal, clear } = useTell('animal.checkIn')
  const [missing, setMissing] = useState<Missing>({})
  function askAgain(open: Missing) {
    clear()
    setMissing(open)
    const first = firstStep(open)
    if (first) sayRefused({ say: 'Not checked in yet.', next: open[first] ?? '' })
  }
  async function checkIn() {
    const answers = checkInOf(draft, units)
    if ('missing' in answers) return askAgain(answers.missing)
    setMissing({})
    const answer = await tell(answers.ready)
    if (answer.ok) return onCheckedIn({ ...answer.value, facts: answers.ready.facts })
    const step = stepOfField(answer.refusal.field)
    if (step === undefined) return playSound('refused')
    setMissing({ [step]: answer.refusal.say })
    sayRefused(answer.refusal)
  }
  function submit(event: FormEvent) {
    event.preventDefault()
    if (!busy) void checkIn()
  }
  return { missing, refusal, busy, submit }
}

/** A licence or tag scanned while the focus is elsewhere goes where it is still missing. */
function useScanFor({ draft, change }: DraftHold): void {
  useScan((text) => {
    const step = (['hunter', 'tag'] as const).find((each) => draft[each] === '')
    if (step === undefined || readSampleNumber(text).ok) return 'not-mine'
    change({ [step]: text.trim().slice(0, 30) })
    sayDone(step === 'hunter' ? 'Taken as the hunter id.' : 'Taken as the tag number.')
  })
}
