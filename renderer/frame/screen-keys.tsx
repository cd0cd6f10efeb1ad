import { useRef } from 'react'
import { roleWords } from '../../shared-types/person.ts'
import type { WhoView } from '../../shared-types/views/people.ts'
import { go, usePlace } from '../desk/place.ts'
import { KeyCap } from '../parts/key-cap.tsx'
import { useKey } from '../scanner/keys.ts'
import './screen-keys.css'
import { entriesAt, type ScreenEntry, screenAt } from './screens.ts'

/** The way to each screen, by its key. A screen whose work is not this role's says so. */
export function ScreenKeys(props: { who: WhoView }) {
  const isOffice = props.who.station.office
  const screen = screenAt(isOffice, usePlace().screen)
  return (
    <div className="screen-keys">
      <nav aria-label="Screens" data-tour="screens">
        <ul>
          {entriesAt(isOffice).map((entry) => (
            <li key={entry.screen}>
              <ScreenKey entry={entry} isHere={entry.screen === screen} who={props.who} />
            </li>
          ))}
        </ul>
      </nav>
      <LookOnlyNote who={props.who} />
    </div>
  )
}

function ScreenKey(props: { entry: ScreenEntry; isHere: boolean; who: WhoView }) {
  const { entry, isHere, who } = props
  const link = useRef<HTMLAnchorElement>(null)
  useKey(entry.key, link, () => go(entry.screen))
  const isForLooking = entry.work !== null && !who.may.includes(entry.work)
  return (
    <a
      ref={link}
      href={`#${entry.screen}`}
      className="screen-key"
      aria-current={isHere ? 'page' : undefined}
      aria-keyshortcuts={entry.key}
    >
      <KeyCap>{entry.key}</KeyCap>
      <span>
        {entry.words}
        {isForLooking && <small>look only</small>}
      </span>
    </a>
  )
}

/** Why some screens are marked, in one place. */
function LookOnlyNote(props: { who: WhoView }) {
  const { may, person } = props.who
  const isAnyMarked = entriesAt(props.who.station.office).some(
    ({ work }) => work !== null && !may.includes(work),
  )
  if (person === null || !isAnyMarked) return null
  return <p className="screen-keys-note">look only: not the work of a {roleWords[person.role]}</p>
}
