import type { CallOutput } from '../../shared-types/desk-api.ts'
import type { PersonId } from '../../shared-types/sample-number.ts'
import { useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { Empty } from '../parts/empty.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { Shape } from '../parts/shape.tsx'
import { sayDone } from '../scanner/strip.ts'
import './assign-dialog.css'
import { type CrewMember, crewShapes, crewState, crewWords, kitWords, orderCrew } from './crew.ts'
import { calledNumber, headWords, kindWords } from './words.ts'

type Line = CallOutput<'line'>
type LineAnimal = Line['waiting'][number]

/** Who takes this animal: those who can, free people first, each under a digit. */
export function AssignDialog(props: { animal: LineAnimal; line: Line; onClose: () => void }) {
  const { animal, line, onClose } = props
  const assign = useTell('animal.assign')
  const others = orderCrew(line.crew).filter((member) => member.person !== animal.sampler)
  const able = others.filter((member) => animal.canWork.includes(member.person))
  const unable = others.filter((member) => !animal.canWork.includes(member.person))
  async function pick(member: CrewMember) {
    const answer = await assign.tell({ animal: animal.animal, sampler: member.person })
    if (!answer.ok) return
    sayDone(`${calledNumber(animal.animal)} is with ${member.name}.`)
    onClose()
  }
  return (
    <Dialog title={`Who takes ${calledNumber(animal.animal)}?`} onClose={onClose}>
      <p>
        {kindWords(animal)}. {headWords(animal)}
      </p>
      <RefusalNote refusal={assign.refusal} />
      {able.length === 0 && (
        <Empty
          say="Nobody on duty can work this head."
          next="Put someone on duty, or add their training, on F10."
        />
      )}
      <ul className="assign">
        {able.map((member, place) => (
          <li key={member.person}>
            <Button
              keyHint={place < 9 ? String(place + 1) : undefined}
              autoFocus={place === 0}
              isDisabled={assign.busy}
              onPress={() => void pick(member)}
            >
              <Candidate member={member} />
            </Button>
          </li>
        ))}
      </ul>
      {unable.length > 0 && (
        <p className="field-hint">Not now: {unable.map((member) => whyNot(member)).join('; ')}.</p>
      )}
    </Dialog>
  )
}

function whyNot(member: CrewMember): string {
  const state = crewState(member)
  const isHere = state === 'free' || state === 'working'
  return `${member.name} (${isHere ? 'not trained for this head' : crewWords[state]})`
}

function Candidate(props: { member: CrewMember }) {
  const { member } = props
  const state = crewState(member)
  const inHand = member.animals.length
  return (
    <span className="candidate">
      <span className="candidate-name">{member.name}</span>
      <span className={`candidate-state candidate-${state}`}>
        <Shape kind={crewShapes[state]} /> {crewWords[state]}
        {inHand > 1 && `, ${inHand} animals`}
      </span>
      <span className={`candidate-kits-${member.kitsLow}`}>
        <b className="numbers">{member.kits}</b> {kitWords[member.kitsLow]}
      </span>
    </span>
  )
}

/** A badge scanned on the line gives the chosen animal to its bearer. */
export function memberOf(line: Line, person: PersonId): CrewMember | undefined {
  return line.crew.find((member) => member.person === person)
}
