import { useState } from 'react'
import { PersonName, Pin } from '../../shared-types/person.ts'
import { DeskLetter, Season, StationCode } from '../../shared-types/sample-number.ts'
import type { CallInput } from '../../shared-types/desk-api.ts'
import { useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { PinEntry } from '../parts/pin-entry.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone } from '../scanner/strip.ts'

interface Draft {
  readonly name: string
  readonly code: string
  readonly letter: string
  readonly season: string
  readonly zone: string
  readonly leadName: string
  readonly pin: string
}

const checks: readonly (readonly [
  keyof Draft,
  { safeParse: (text: string) => { success: boolean } },
  string,
])[] = [
  ['code', StationCode, 'Three of A C D E F H J K M N P Q R T V W X Y 3 4 6 7 9.'],
  ['letter', DeskLetter, 'One of A C D E F H J K M N P Q R T V W X Y.'],
  ['season', Season, 'Two digits of the year, like 26.'],
  ['leadName', PersonName, 'A name of 2 to 60 characters.'],
  ['pin', Pin, '4 to 8 digits.'],
]

function errorsOf(draft: Draft): Partial<Record<keyof Draft, string>> {
  const wrong = checks.filter(([field, schema]) => !schema.safeParse(draft[field]).success)
  return {
    ...(draft.name.trim().length < 2 ? { name: 'A name of 2 to 60 characters.' } : {}),
    ...Object.fromEntries(wrong.map(([field, , say]) => [field, say])),
  }
}

/** The office takes the merged log up: its own desk signs what is settled from now on. */
export function OfficeForm(props: {
  file: string
  today: string
  zone: string
  onBack: () => void
}) {
  const setUp = useTell('office.setUp')
  const [draft, setDraft] = useState<Draft>({
    name: '',
    code: '',
    letter: 'A',
    season: props.today.slice(2, 4),
    zone: props.zone,
    leadName: '',
    pin: '',
  })
  const [errors, setErrors] = useState<Partial<Record<keyof Draft, string>>>({})
  const entry = (field: keyof Draft) => ({
    value: draft[field],
    error: errors[field],
    onChange: (text: string) => setDraft({ ...draft, [field]: text }),
  })
  const upper = (field: keyof Draft) => (text: string) =>
    setDraft({ ...draft, [field]: text.toUpperCase() })
  async function finish() {
    const wrong = errorsOf(draft)
    setErrors(wrong)
    if (Object.keys(wrong).length > 0) return
    const { name, code, letter, season, zone, leadName, pin } = draft
    const input: CallInput<'office.setUp'> = {
      file: props.file,
      season,
      station: code,
      letter,
      name,
      zone,
      lead: { name: leadName, pin },
    }
    const made = await setUp.tell(input)
    if (!made.ok) return
    window.location.hash = 'discrepancies'
    sayDone(`${name} has taken up ${props.file}.`)
  }
  return (
    <form
      className="set-up"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        void finish()
      }}
    >
      <h1>Set up the office</h1>
      <p>
        For {props.file}. What the office settles is signed by a desk of its own, so its code and
        letter must differ from those of every station and of every other office.
      </p>
      <div className="stack">
        <TextEntry {...entry('name')} label="Name of the office" autoFocus maxLength={60} />
        <div className="settings-columns">
          <TextEntry
            {...entry('code')}
            label="Office code"
            hint="Three characters. Left out are those misread by hand: B G I L O S U Z and 0 1 2 5 8."
            numbers
            maxLength={3}
            onChange={upper('code')}
          />
          <TextEntry
            {...entry('letter')}
            label="Letter of this desk"
            numbers
            maxLength={1}
            onChange={upper('letter')}
          />
          <TextEntry
            {...entry('season')}
            label="Season"
            inputMode="numeric"
            numbers
            maxLength={2}
          />
        </div>
        <TextEntry {...entry('leadName')} label="Your name" maxLength={60} />
        <PinEntry {...entry('pin')} label="Your PIN" />
      </div>
      <RefusalNote refusal={setUp.refusal} />
      <div className="row">
        <Button kind="main" type="submit" keyHint="Enter" isDisabled={setUp.busy}>
          Take up the record
        </Button>
        <Button keyHint="Esc" onPress={props.onBack}>
          Back
        </Button>
      </div>
    </form>
  )
}
