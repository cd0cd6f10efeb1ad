import type { CSSProperties } from 'react'
import type { CallOutput } from '../../shared-types/desk-api.ts'
import type { ForecastView, MinutesRange } from '../../shared-types/views/forecast.ts'
import { Empty } from '../parts/empty.tsx'
import { Shape } from '../parts/shape.tsx'
import type { Roving } from '../parts/use-roving.ts'
import { rangeWords } from './wait-words.ts'
import { barShare, fullBarMinutes, waitLook } from './wait.ts'
import './waiting-list.css'
import { calledNumber, headWords, kindWords } from './words.ts'

type Line = CallOutput<'line'>
type LineAnimal = Line['waiting'][number]

/** The animals waiting, in the order they should be worked; each bar runs from arrival to now. */
export function WaitingList(props: {
  line: Line
  now: number
  /** What is forecast of each, as far as it is known. */
  waits: ForecastView['waits']
  roving: Roving
  /** The left or right arrow: to the list on the other side. */
  onAside: () => void
  onOpen: (animal: LineAnimal) => void
}) {
  const { line, now } = props
  const waits = line.waiting.map((animal) => minutesSince(animal.arrivedMs, now))
  const target = line.targetWaitMinutes
  const full = fullBarMinutes(Math.max(0, ...waits), target)
  const axis = { '--target': `${barShare(target, full) * 100}%` } as CSSProperties
  if (line.waiting.length === 0) return <Empty say="Nobody is waiting." next="Check-in is on F3." />
  return (
    <div className="waiting" style={axis}>
      <p className="waiting-axis" aria-hidden="true">
        <span>target {target} min</span>
      </p>
      <ol className="waiting-rows" aria-label="Animals waiting, the next to be worked first">
        {line.waiting.map((animal, place) => (
          <li key={animal.animal}>
            <button
              type="button"
              className="waiting-row"
              {...props.roving.rowProps(animal.animal, props.onAside)}
              onClick={() => props.onOpen(animal)}
            >
              <Wait minutes={waits[place] ?? 0} target={target} full={full} />
              <Facts
                animal={animal}
                line={line}
                range={props.waits.find((each) => each.animal === animal.animal)?.range ?? null}
              />
            </button>
          </li>
        ))}
      </ol>
    </div>
  )
}

/** Whole minutes from a moment to now, never less than none. */
export function minutesSince(ms: number, now: number): number {
  return Math.max(0, Math.floor((now - ms) / 60_000))
}

function Wait(props: { minutes: number; target: number; full: number }) {
  const { minutes, target, full } = props
  const look = waitLook(minutes, target)
  const length = { '--length': `${barShare(minutes, full) * 100}%` } as CSSProperties
  return (
    <>
      <span className="waiting-minutes numbers">
        {minutes}
        <small> min</small>
      </span>
      <span className={`waiting-time waiting-${look.shape}`} style={length}>
        <span className="waiting-bar" />
        <span className="waiting-look">
          <Shape kind={look.shape} /> {look.words}
        </span>
      </span>
    </>
  )
}

function Facts(props: { animal: LineAnimal; line: Line; range: MinutesRange | null }) {
  const { animal, line, range } = props
  const head = headWords(animal)
  return (
    <span className="waiting-facts">
      <span className="waiting-kind">
        <b className="numbers">{calledNumber(animal.animal)}</b> {kindWords(animal)}
      </span>
      <span className="waiting-more">
        {animal.programme === 'mandatory' && <b>mandatory </b>}
        {head && <b>{head} </b>}
        {range && <span className="numbers">turn: {rangeWords(range)} </span>}
        <Workers animal={animal} line={line} />
        {!animal.placeUsable && (
          <span className="waiting-warn">
            <Shape kind="soon" /> place missing
          </span>
        )}
      </span>
    </span>
  )
}

/** Who of those on duty can take this head; free people in bold. */
function Workers(props: { animal: LineAnimal; line: Line }) {
  const able = props.line.crew.filter((member) => props.animal.canWork.includes(member.person))
  if (able.length === 0)
    return (
      <span className="waiting-nobody">
        <Shape kind="now" /> nobody on duty can work it
      </span>
    )
  const free = able.filter((member) => member.animals.length === 0)
  return <span>{free.length > 0 ? `free: ${names(free)}` : `busy now: ${names(able)}`}</span>
}

function names(people: readonly { name: string }[]): string {
  const [first, second] = people
  if (people.length <= 2) return people.map((person) => person.name).join(', ')
  return `${first?.name}, ${second?.name} and ${people.length - 2} more`
}
