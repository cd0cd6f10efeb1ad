import { useState } from 'react'
import { Role, Training, roleWords, trainingWords } from '../../shared-types/person.ts'
import type { PersonView } from '../../shared-types/views/people.ts'
import { useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Choice, ManyChoice } from '../parts/choice.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { PinEntry } from '../parts/pin-entry.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone } from '../scanner/strip.ts'

const roleHints: Record<PersonView['role'], string> = {
  lead: 'may do everything',
  sampler: 'takes tissue, assigns to self',
  volunteer: 'checks in, prints, counts',
  office: 'corrects records, looks',
}

/** One person of the crew: added with a first PIN, or changed. */
export function PersonDialog(props: { person?: PersonView; onClose: () => void }) {
  const { person, onClose } = props
  const [name, setName] = useState(person?.name ?? '')
  const [role, setRole] = useState<PersonView['role']>(person?.role ?? 'sampler')
  const [training, setTraining] = useState<PersonView['training']>(person?.training ?? ['deer'])
  const [active, setActive] = useState(person?.active ?? true)
  const [pin, setPin] = useState('')
  const [pinAgain, setPinAgain] = useState('')
  const [isTried, setTried] = useState(false)
  const add = useTell('person.add')
  const change = useTell('person.change')
  const refusal = add.refusal ?? change.refusal
  const errorIn = (field: string) => (refusal?.field === field ? refusal.say : undefined)
  const differ = isTried && pin !== pinAgain ? 'The two PINs differ: type both again.' : undefined

  async function submit() {
    setTried(true)
    if (person === undefined && pin !== pinAgain) return
    const answer = person
      ? await change.tell({ person: person.person, name, role, training, active })
      : await add.tell({ name, role, training, pin })
    if (!answer.ok) return
    sayDone(person ? `${name} is changed.` : `${name} is of the crew. Put them on duty next.`)
    onClose()
  }
  return (
    <Dialog title={person ? `Change ${person.name}` : 'Add a person'} onClose={onClose}>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault()
          void submit()
        }}
      >
        <TextEntry
          label="Name"
          autoFocus
          maxLength={60}
          value={name}
          error={errorIn('name')}
          onChange={setName}
        />
        <Choice
          label="Role"
          options={Role.options.map((each) => ({
            value: each,
            label: roleWords[each],
            hint: roleHints[each],
          }))}
          value={role}
          onChange={setRole}
        />
        <ManyChoice
          label="Trained for"
          hint="Heads are offered only to people trained for them."
          options={Training.options.map((each) => ({ value: each, label: trainingWords[each] }))}
          value={training}
          onChange={setTraining}
        />
        {person ? (
          <ManyChoice
            label="At this station"
            options={[{ value: 'active', label: 'works here and may sign in' }]}
            value={active ? ['active'] : []}
            onChange={(picked) => setActive(picked.length > 0)}
          />
        ) : (
          <div className="settings-columns">
            <PinEntry
              label="First PIN"
              hint="4 to 8 digits, typed by the person."
              value={pin}
              error={errorIn('pin')}
              onChange={setPin}
            />
            <PinEntry label="Once more" value={pinAgain} error={differ} onChange={setPinAgain} />
          </div>
        )}
        <RefusalNote refusal={refusal} />
        <div>
          <Button kind="main" type="submit" keyHint="Enter" isDisabled={add.busy || change.busy}>
            {person ? 'Save' : 'Add'}
          </Button>
        </div>
      </form>
    </Dialog>
  )
}
