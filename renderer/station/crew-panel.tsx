import { useState } from 'react'
import type { CommandName } from '../../shared-types/desk-api.ts'
import type { LocalDate } from '../../shared-types/local-date.ts'
import { roleWords, trainingWords } from '../../shared-types/person.ts'
import { numberParts } from '../../shared-types/sample-number.ts'
import type { PersonView } from '../../shared-types/views/people.ts'
import { useTell, useWho } from '../desk/use-desk.ts'
import { PrintBadge } from '../labels/print-badge.tsx'
import { Badge } from '../parts/badge.tsx'
import { Button } from '../parts/button.tsx'
import { Panel } from '../parts/panel.tsx'
import { useFirstFocus, useRoving } from '../parts/use-roving.ts'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import './crew-panel.css'
import { type Duty, dutyShapes, dutyWords } from './duty.ts'
import { PersonDialog } from './person-dialog.tsx'
import { PinDialog } from './pin-dialog.tsx'
import { ShiftDialog } from './shift-dialog.tsx'

type Task = 'add' | 'change' | 'pin' | 'shift'

/** Everyone of the crew; arrow keys choose, and one key puts the chosen on duty, on a break or off. */
export function CrewPanel(props: { people: readonly PersonView[]; today: LocalDate }) {
  const { people, today } = props
  const [task, setTask] = useState<Task>()
  const roving = useRoving(people.map((person) => person.person))
  useFirstFocus(roving)
  const chosen = people.find((person) => person.person === roving.chosen)
  const close = () => setTask(undefined)
  return (
    <Panel
      title="Crew"
      count={people.filter((person) => person.active).length}
      actions={<Actions chosen={chosen} onTask={setTask} />}
    >
      <DutyKeys chosen={chosen} />
      <ul className="people" aria-label="Crew">
        {people.map((person) => (
          <li key={person.person}>
            <button
              type="button"
              className="person-row"
              {...roving.rowProps(person.person)}
              onClick={() => setTask('change')}
            >
              <PersonRow person={person} />
            </button>
          </li>
        ))}
      </ul>
      {task === 'add' && <PersonDialog onClose={close} />}
      {task === 'change' && chosen && <PersonDialog person={chosen} onClose={close} />}
      {task === 'pin' && chosen && <PinDialog person={chosen} onClose={close} />}
      {task === 'shift' && chosen && <ShiftDialog person={chosen} today={today} onClose={close} />}
    </Panel>
  )
}

function PersonRow(props: { person: PersonView }) {
  const { person } = props
  const trained = person.training.map((each) => trainingWords[each]).join(', ')
  return (
    <>
      <span className="numbers">{numberParts(person.person).serial}</span>
      <span className="person-who">
        <b>{person.name}</b>
        <span>
          {roleWords[person.role]}
          {trained && `: ${trained}`}
        </span>
      </span>
      <span className="numbers">
        {person.shift ? `${person.shift.from}–${person.shift.to}` : 'no shift'}
      </span>
      {person.active ? (
        <Badge shape={dutyShapes[person.duty]}>{dutyWords[person.duty]}</Badge>
      ) : (
        <Badge shape="idle">no longer here</Badge>
      )}
    </>
  )
}

const leadOnly = 'a lead does this'

function Actions(props: { chosen: PersonView | undefined; onTask: (task: Task) => void }) {
  const { chosen, onTask } = props
  const may = useWho()?.may ?? []
  const offFor = (command: CommandName, needsChosen: boolean) => ({
    isDisabled: !may.includes(command) || (needsChosen && chosen === undefined),
    why: may.includes(command) ? undefined : leadOnly,
  })
  return (
    <>
      <Button
        kind="main"
        keyHint="Alt+A"
        {...offFor('person.add', false)}
        onPress={() => onTask('add')}
      >
        Add a person
      </Button>
      <Button keyHint="Enter" {...offFor('person.change', true)} onPress={() => onTask('change')}>
        Change
      </Button>
      <Button keyHint="h" {...offFor('shift.plan', true)} onPress={() => onTask('shift')}>
        Shift
      </Button>
      <Button keyHint="p" {...offFor('person.setPin', true)} onPress={() => onTask('pin')}>
        PIN
      </Button>
      <PrintBadge person={chosen} />
    </>
  )
}

const duties: readonly { duty: Duty; key: string; words: string }[] = [
  { duty: 'on', key: 'o', words: 'on duty' },
  { duty: 'break', key: 'b', words: 'on a break' },
  { duty: 'off', key: 'f', words: 'off duty' },
]

function DutyKeys(props: { chosen: PersonView | undefined }) {
  const { chosen } = props
  const { tell, busy } = useTell('duty.change')
  async function put(duty: Duty) {
    if (chosen === undefined) return
    const answer = await tell({ person: chosen.person, duty })
    if (answer.ok) sayDone(`${chosen.name} is ${dutyWords[duty]}.`)
    else sayRefused(answer.refusal)
  }
  return (
    <div className="row duty-keys">
      <span>
        Put <b>{chosen?.name ?? 'nobody'}</b>
      </span>
      {duties.map(({ duty, key, words }) => (
        <Button
          key={duty}
          keyHint={key}
          isDisabled={busy || chosen === undefined || !chosen.active || chosen.duty === duty}
          onPress={() => void put(duty)}
        >
          {words}
        </Button>
      ))}
    </div>
  )
}
