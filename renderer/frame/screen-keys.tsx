import { useRef } from 'react'
import { roleWords } from '../../shared-types/person.ts'
import type { WhoView } from '../../shared-types/views/people.ts'
import { go, usePlace } from '../desk/place.ts'
import { KeyCap } from '../parts/key-cap.tsx'
import { useKey } from '../scanner/keys.ts'
import './screen-keys.css'
import { type ScreenEntry, screenEntries } from './screens.ts'

/** The way to each screen, by its key. A screen whose work is not this role's says so. */
export function ScreenKeys(props: { who: WhoView }) {
  const { screen } = usePlace()
  return (
    <nav className="screen-keys" aria-label="Screens">
      <ul>
        {screenEntries.map((entry) => (
          <li key={entry.screen}>
            <ScreenKey entry={entry} isHere={entry.screen === screen} who={props.who} />
          </li>
        ))}
      </ul>
    </nav>
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
        {isForLooking && <small>{lookOnly(who)}</small>}
      </span>
    </a>
  )
}

function lookOnly(who: WhoView): string {
  return who.person === null ? 'look only' : `look only: ${roleWords[who.person.role]}`
}
