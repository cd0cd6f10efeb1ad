import { defaultRangeExtractor, useVirtualizer } from '@tanstack/react-virtual'
import { type CSSProperties, useEffect, useRef } from 'react'
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

interface WaitingListProps {
  line: Line
  now: number
  /** What is forecast of each, as far as it is known. */
  waits: ForecastView['waits']
  roving: Roving
  /** The left or right arrow: to the list on the other side. */
  onAside: () => void
  onOpen: (animal: LineAnimal) => void
}

/** The animals waiting, in the order they should be worked; each bar runs from arrival to now. */
export function WaitingList(props: WaitingListProps) {
  const { line, now } = props
  const waits = line.waiting.map((animal) => minutesSince(animal.arrivedMs, now))
  const target = line.targetWaitMinutes
  const full = fullBarMinutes(
    waits.reduce((longest, minutes) => Math.max(longest, minutes), 0),
    target,
  )
  const axis = { '--target': `${barShare(target, full) * 100}%` } as CSSProperties
  if (line.waiting.length === 0) return <Empty say="Nobody is waiting." next="Check-in is on F3." />
  return (
    <div className="waiting" style={axis}>
      <p className="waiting-axis" aria-hidden="true">
        <span>target {target} min</span>
      </p>
      <Rows {...props} minutes={waits} full={full} />
    </div>
  )
}

/** A row with three lines of words. Rows are measured once they are drawn. */
const usualHeight = 66

/** Only the rows in sight are drawn, and the chosen one: it may have the focus while it is scrolled away. */
function Rows(props: WaitingListProps & { minutes: readonly number[]; full: number }) {
  const { line, roving } = props
  const room = useRef<HTMLDivElement>(null)
  const chosen = line.waiting.findIndex(({ animal }) => animal === roving.chosen)
  // oxlint-disable-next-line react/incompatible-library -- no compiler memoizes what it returns here
  const virtual = useVirtualizer({
    count: line.waiting.length,
    getScrollElement: () => room.current,
    estimateSize: () => usualHeight,
    getItemKey: (place) => line.waiting[place]?.animal ?? place,
    overscan: 6,
    initialRect: { width: 800, height: 600 },
    rangeExtractor: (range) => {
      const inSight = defaultRangeExtractor(range)
      return chosen < 0 || inSight.includes(chosen)
        ? inSight
        : [...inSight, chosen].toSorted((a, b) => a - b)
    },
  })
  // Rows are measured as they are drawn, so the chosen one may have moved since it was focused. Only
  // another choice scrolls: a line that moves on leaves everybody's view where it is.
  const shown = useRef(roving.chosen)
  useEffect(() => {
    if (chosen < 0 || shown.current === roving.chosen) return
    shown.current = roving.chosen
    virtual.scrollToIndex(chosen, { align: 'auto' })
  }, [chosen, roving.chosen, virtual])
  const rangeOf = new Map(props.waits.map(({ animal, range }) => [animal, range]))
  return (
    <div ref={room} className="waiting-room">
      <ol
        className="waiting-rows"
        aria-label="Animals waiting, the next to be worked first"
        style={{ height: virtual.getTotalSize() }}
      >
        {virtual.getVirtualItems().map(({ index, key, start }) => {
          const animal = line.waiting[index]
          if (animal === undefined) return null
          return (
            <li
              key={key}
              ref={virtual.measureElement}
              data-index={index}
              aria-setsize={line.waiting.length}
              aria-posinset={index + 1}
              style={{ transform: `translateY(${start}px)` }}
            >
              <button
                type="button"
                className="waiting-row"
                {...roving.rowProps(animal.animal, props.onAside)}
                onClick={() => props.onOpen(animal)}
              >
                <Wait
                  minutes={props.minutes[index] ?? 0}
                  target={line.targetWaitMinutes}
                  full={props.full}
                />
                <Facts animal={animal} line={line} range={rangeOf.get(animal.animal) ?? null} />
              </button>
            </li>
          )
        })}
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
