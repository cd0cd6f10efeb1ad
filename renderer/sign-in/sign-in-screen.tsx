import { useState } from 'react'
import { roleWords } from '../../shared-types/person.ts'
import {
  type PersonId,
  grouped,
  numberParts,
  readNumberFor,
} from '../../shared-types/sample-number.ts'
import type { PersonView } from '../../shared-types/views/people.ts'
import { nothing, useAsk, useTell, useWho } from '../desk/use-desk.ts'
import { Badge } from '../parts/badge.tsx'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { Empty } from '../parts/empty.tsx'
import { Notice } from '../parts/notice.tsx'
import { PinEntry } from '../parts/pin-entry.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { useScan } from '../scanner/scans.ts'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import { practicePin } from '../shelf/practice-pin.ts'
import { dutyShapes, dutyWords } from '../station/duty.ts'
import './sign-in-screen.css'

/** Who works at this window now: a tile or a badge, then the PIN. */
export function SignInScreen() {
  const { data, refusal } = useAsk('people', nothing)
  const people = data?.people.filter((person) => person.active) ?? []
  return (
    <div className="sign-in">
      <h1>Who is working here now?</h1>
      <RefusalNote refusal={refusal} />
      {data !== undefined && people.length === 0 && (
        <Empty say="Nobody can sign in at this desk." next="Open another station log." />
      )}
      <PracticePin />
      {people.length > 0 && <SignInForm people={people} />}
    </div>
  )
}

/** On a practice day everyone's PIN is told. */
function PracticePin() {
  const isPractice = useWho()?.station.practice ?? false
  const pin = practicePin()
  if (!isPractice || pin === null) return null
  return (
    <Notice kind="info">
      On this practice day everyone's PIN is <b className="numbers">{pin}</b>.
    </Notice>
  )
}

function SignInForm(props: { people: PersonView[] }) {
  const { people } = props
  const [person, setPerson] = useState<PersonId | null>(null)
  const [pin, setPin] = useState('')
  const [settled, setSettled] = useState<{ person: PersonId; times: number }>()
  const signIn = useTell('person.signIn')

  function pick(picked: PersonId) {
    setPerson(picked)
    signIn.clear()
  }
  function settle(picked: PersonId) {
    setSettled((before) => ({ person: picked, times: (before?.times ?? 0) + 1 }))
  }
  useScan((text) => {
    const read = readNumberFor(['P'], text)
    const scanned = people.find((each) => read.ok && each.person === read.value)
    if (!read.ok) return sayRefused(read.refusal)
    if (scanned === undefined)
      return sayRefused({
        say: `Badge ${grouped(read.value)} is of nobody who can sign in here.`,
        next: 'Choose a person on the screen.',
      })
    pick(scanned.person)
    settle(scanned.person)
    sayDone(`Badge of ${scanned.name}. Now the PIN.`)
  })
  async function submit() {
    if (person === null) return
    const answer = await signIn.tell({ person, pin })
    setPin('')
    if (answer.ok) sayDone(`${nameOf(people, person)} works here now.`)
  }
  return (
    <form
      className="stack"
      onSubmit={(event) => {
        event.preventDefault()
        void submit()
      }}
    >
      <Choice
        label="Arrow keys choose, or scan a badge. Then Enter."
        options={people.map(toOption)}
        value={person}
        onChange={pick}
        autoFocus
        onSettle={settle}
      />
      {person !== null && (
        <div className="sign-in-pin">
          <PinEntry
            key={settled?.times}
            label={`PIN of ${nameOf(people, person)}`}
            value={pin}
            onChange={setPin}
            autoFocus={settled?.person === person}
            error={signIn.refusal && `${signIn.refusal.say} ${signIn.refusal.next}`}
          />
          <Button kind="main" type="submit" keyHint="Enter" isDisabled={signIn.busy}>
            Sign in
          </Button>
        </div>
      )}
    </form>
  )
}

function nameOf(people: readonly PersonView[], person: PersonId): string {
  return people.find((each) => each.person === person)?.name ?? 'nobody'
}

function toOption(person: PersonView) {
  return {
    value: person.person,
    label: person.name,
    hint: (
      <>
        {roleWords[person.role]}, badge {numberParts(person.person).serial}{' '}
        <Badge shape={dutyShapes[person.duty]}>{dutyWords[person.duty]}</Badge>
      </>
    ),
  }
}
