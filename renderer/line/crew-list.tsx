import type { CallOutput } from '../../shared-types/desk-api.ts'
import { Empty } from '../parts/empty.tsx'
import { Shape, type ShapeKind } from '../parts/shape.tsx'
import {
  type CrewMember,
  crewShapes,
  crewState,
  crewWords,
  kitWarning,
  kitWords,
  orderCrew,
} from './crew.ts'
import './crew-list.css'
import type { Roving } from '../parts/use-roving.ts'
import { minutesSince } from './waiting-list.tsx'
import { calledNumber, kindWords } from './words.ts'

type Line = CallOutput<'line'>

/** The crew, free people first, each with the kits in hand. */
export function CrewList(props: {
  line: Line
  now: number
  roving: Roving
  /** The left or right arrow: to the list on the other side. */
  onAside: () => void
  onOpen: (member: CrewMember) => void
}) {
  const { line } = props
  if (line.crew.length === 0)
    return <Empty say="Nobody of the crew takes samples yet." next="Add the crew on F10." />
  return (
    <ul className="crew" aria-label="Crew, free people first">
      {orderCrew(line.crew).map((member) => (
        <li key={member.person}>
          <button
            type="button"
            className={`crew-row crew-${crewState(member)}`}
            {...props.roving.rowProps(member.person, props.onAside)}
            onClick={() => props.onOpen(member)}
          >
            <State member={member} />
            <Doing member={member} line={line} now={props.now} />
            <Kits member={member} />
          </button>
        </li>
      ))}
      <li className="crew-stock">
        <span>Kits in stock</span>
        <b className="numbers">{line.kitsInStock}</b>
      </li>
    </ul>
  )
}

function State(props: { member: CrewMember }) {
  const state = crewState(props.member)
  return (
    <span className="crew-state">
      <Shape kind={crewShapes[state]} /> {crewWords[state]}
    </span>
  )
}

function Doing(props: { member: CrewMember; line: Line; now: number }) {
  const { member, line, now } = props
  const inHand = line.working.filter((animal) => animal.sampler === member.person)
  return (
    <span className="crew-doing">
      <b>{member.name}</b>
      {inHand.map((animal) => (
        <span key={animal.animal}>
          <b className="numbers">{calledNumber(animal.animal)}</b> {kindWords(animal)},{' '}
          {minutesSince(animal.assignedMs ?? now, now)} min
        </span>
      ))}
      {inHand.length === 0 && <span>{restWords(member, line)}</span>}
    </span>
  )
}

/** What a person without an animal brings: how much of the line they can take, and their day so far. */
function restWords(member: CrewMember, line: Line): string {
  const { duty, finishedToday, usualMinutes } = member
  const pace = usualMinutes === null ? '' : `, usually ${Math.round(usualMinutes)} min`
  const done = `${finishedToday} done today${pace}`
  if (duty !== 'on' || line.waiting.length === 0) return done
  const able = line.waiting.filter((animal) => animal.canWork.includes(member.person)).length
  return `can take ${able} of ${line.waiting.length}; ${done}`
}

const kitShapes: Record<CrewMember['kitsLow'], ShapeKind | undefined> = {
  enough: undefined,
  low: 'soon',
  none: 'now',
}

function Kits(props: { member: CrewMember }) {
  const { kits } = props.member
  const kitsLow = kitWarning(props.member)
  const shape = kitShapes[kitsLow]
  return (
    <span className={`crew-kits crew-kits-${kitsLow}`}>
      <span className="crew-kits-count numbers">{kits}</span>
      <span className="crew-kits-word">
        {shape && <Shape kind={shape} />} {kitWords[kitsLow]}
      </span>
    </span>
  )
}
