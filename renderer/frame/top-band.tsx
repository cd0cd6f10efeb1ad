import { numberParts } from '../../shared-types/sample-number.ts'
import { roleWords } from '../../shared-types/person.ts'
import type { WhoView } from '../../shared-types/views/people.ts'
import { useTell } from '../desk/use-desk.ts'
import { useNow } from '../desk/use-now.ts'
import { HelpButton } from '../help/help-link.tsx'
import { Button } from '../parts/button.tsx'
import { formatTime } from '../parts/zoned-time.ts'
import { lightWords, nextLight, useLight } from '../theme/light.ts'
import { FindBox } from './find-box.tsx'
import './top-band.css'

/** Where this is, what time it is there, who works here, and the way to find any number. */
export function TopBand(props: { who: WhoView }) {
  const { station } = props.who
  return (
    <div className="top-band">
      <div className="top-band-place">
        <strong className="top-band-station">{station.name}</strong>
        <span className="top-band-desk">
          Desk <b className="numbers">{station.desk.slice(-1)}</b>{' '}
          <span className="numbers">{station.desk}</span>
        </span>
      </div>
      <Clock zone={station.zone} />
      {props.who.person && <HelpButton />}
      <LightSwitch />
      {props.who.person && <FindBox />}
      <Person who={props.who} />
    </div>
  )
}

function Clock(props: { zone: string }) {
  const now = useNow(1000)
  return (
    <time className="top-band-clock numbers" dateTime={new Date(now).toISOString()}>
      {formatTime(now, props.zone)}
    </time>
  )
}

function Person(props: { who: WhoView }) {
  const { tell, busy } = useTell('person.lock')
  const { person } = props.who
  if (person === null) return null
  return (
    <div className="top-band-person" data-tour="person">
      <span>
        <strong>{person.name}</strong>
        <small>
          {roleWords[person.role]}, badge {numberParts(person.person).serial}
        </small>
      </span>
      <Button
        keyHint="Ctrl+L"
        label="Change person"
        isDisabled={busy}
        onPress={() => void tell({})}
      >
        Change
      </Button>
    </div>
  )
}

/** The next light: night for dusk and dawn, high contrast for low sun on the screen. */
export function LightSwitch() {
  const next = nextLight[useLight()]
  const { tell } = useTell('light.choose')
  return (
    <Button keyHint="Alt+N" onPress={() => void tell({ light: next })}>
      {lightWords[next]}
    </Button>
  )
}
