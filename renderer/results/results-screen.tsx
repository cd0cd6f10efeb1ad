import { type ReactNode, useRef, useState } from 'react'
import type { ResultsView } from '../../shared-types/views/results.ts'
import { nothing, useAsk, useWho } from '../desk/use-desk.ts'
import { KeyCap } from '../parts/key-cap.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { useFirstFocus, useRoving } from '../parts/use-roving.ts'
import { useKey } from '../scanner/keys.ts'
import { Doubts } from './doubts.tsx'
import { FollowUp } from './follow-up.tsx'
import { LookUp } from './look-up.tsx'
import { Overdue } from './overdue.tsx'
import { Overview } from './overview.tsx'
import { Privacy } from './privacy.tsx'
import { ReadIn } from './read-in.tsx'
import './results.css'
import { Rules } from './rules.tsx'
import { Tell } from './tell.tsx'
import { Training } from './training.tsx'

const parts = [
  'overview',
  'read-in',
  'doubts',
  'tell',
  'follow-up',
  'look-up',
  'overdue',
  'privacy',
  'rules',
  'training',
] as const
type Part = (typeof parts)[number]

const partWords: Record<Part, string> = {
  overview: 'Overview',
  'read-in': 'Read results in',
  doubts: 'Rows in doubt',
  tell: 'Tell hunters',
  'follow-up': 'Follow up',
  'look-up': 'Look up',
  overdue: 'Overdue',
  privacy: 'Contacts',
  rules: 'Rules',
  training: 'Training',
}

/** How many things wait in a part; null where nothing is counted. */
function waiting(part: Part, { words, openDoubts, overdue }: ResultsView): number | null {
  const untold = (of: readonly string[]) =>
    words.filter(({ word }) => of.includes(word)).reduce((all, each) => all + each.untold, 0)
  if (part === 'doubts') return openDoubts
  if (part === 'tell') return untold(['not-detected', 'detected', 'unsuitable'])
  if (part === 'follow-up') return untold(['detected'])
  return part === 'overdue' ? overdue : null
}

/** From the laboratory's file to the hunter: each step a part of its own, by its key. */
export function ResultsScreen() {
  const { data, refusal } = useAsk('results', nothing)
  const isLead = useWho()?.person?.role === 'lead'
  const [part, setPart] = useState<Part>('overview')
  const shown = parts.filter((each) => each !== 'training' || isLead)
  const roving = useRoving(shown)
  useFirstFocus(roving)
  return (
    <div className="results">
      <nav className="results-parts" aria-label="Parts of results" data-keys>
        <h1>Results</h1>
        <ul>
          {shown.map((each, at) => (
            <li key={each}>
              <PartKey
                part={each}
                digit={String((at + 1) % 10)}
                count={data ? waiting(each, data) : null}
                isHere={each === part}
                row={roving.rowProps(each)}
                onPress={() => {
                  roving.focus(each)
                  setPart(each)
                }}
              />
            </li>
          ))}
        </ul>
      </nav>
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- scrolls without holding anything to press */}
      <div className="results-main" role="group" aria-label={partWords[part]} tabIndex={0}>
        <RefusalNote refusal={refusal} />
        {data && shownPart(part, data, setPart)}
      </div>
    </div>
  )
}

function shownPart(part: Part, results: ResultsView, go: (part: Part) => void): ReactNode {
  switch (part) {
    case 'overview':
      return <Overview results={results} />
    case 'read-in':
      return (
        <ReadIn
          laboratories={results.laboratories}
          onDone={(doubts) => go(doubts > 0 ? 'doubts' : 'overview')}
        />
      )
    case 'doubts':
      return <Doubts />
    case 'tell':
      return <Tell words={results.words} />
    case 'follow-up':
      return <FollowUp />
    case 'look-up':
      return <LookUp />
    case 'overdue':
      return <Overdue />
    case 'privacy':
      return <Privacy />
    case 'rules':
      return <Rules rules={results.rules} />
    case 'training':
      return <Training />
  }
}

function PartKey(props: {
  part: Part
  digit: string
  count: number | null
  isHere: boolean
  row: ReturnType<ReturnType<typeof useRoving>['rowProps']>
  onPress: () => void
}) {
  const { part, digit, count, isHere, row } = props
  const button = useRef<HTMLButtonElement>(null)
  useKey(digit, button, () => button.current?.click())
  return (
    <button
      {...row}
      ref={(element) => {
        row.ref(element)
        button.current = element
      }}
      type="button"
      className={`results-part${isHere ? ' results-part-here' : ''}`}
      aria-current={isHere ? 'page' : undefined}
      aria-keyshortcuts={digit}
      onClick={props.onPress}
    >
      <KeyCap>{digit}</KeyCap>
      <span>{partWords[part]}</span>
      {count !== null && count > 0 && <span className="results-count numbers">{count}</span>}
    </button>
  )
}
