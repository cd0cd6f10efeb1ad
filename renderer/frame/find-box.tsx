import { lazy, type RefObject, Suspense, useEffect, useRef, useState } from 'react'
import { fill } from '../../shared-types/fill.ts'
import { readSampleNumber } from '../../shared-types/sample-number.ts'
import type { SeekHit, StoryOf } from '../../shared-types/views/find.ts'
import { callDesk } from '../desk/answer.ts'
import { useConnection } from '../desk/desk-provider.tsx'
import { go } from '../desk/place.ts'
import { useAsk } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { KeyCap } from '../parts/key-cap.tsx'
import { NumberText } from '../parts/number-text.tsx'
import { useKey } from '../scanner/keys.ts'
import { useScanFallback } from '../scanner/scans.ts'
import { sayRefused } from '../scanner/strip.ts'
import './find-box.css'
import { findWords as words } from './find-words.ts'
import { screenWords } from './screens.ts'
import { type Found, useFind } from './use-find.ts'

const FoundStory = lazy(async () => ({ default: (await import('./found-story.tsx')).FoundStory }))

/** Characters of a number, with no hyphens; one may have been lost in typing. */
const numberLength = 11

/** Finds anything by letters typed here, or by a scan that no screen wanted, and tells its story. */
export function FindBox() {
  const input = useRef<HTMLInputElement>(null)
  const room = useRef<HTMLElement>(null)
  const connection = useConnection()
  const [text, setText] = useState('')
  const [story, setStory] = useState<StoryOf>()
  const { found, find, clear } = useFind()
  const hits = useHits(text)
  useSteps(room)
  useKey('Ctrl+K', input, () => input.current?.focus())
  useScanFallback((scanned) => void find(scanned))
  function open(of: StoryOf) {
    setText('')
    setStory(of)
  }
  async function submit() {
    const typed = text.trim()
    if (typed === '') return
    if (readSampleNumber(typed).ok) return (await find(typed)) && setText('')
    // Asked anew: Enter may come before the list under the field does.
    const answer = await callDesk(connection, 'seek', { text: typed })
    const first = answer.ok ? answer.value.hits[0] : undefined
    if (first) return open(first.of)
    // As long as a number of ours: then it was mistyped, and what is wrong with it is known.
    if (typed.replaceAll('-', '').length >= numberLength) return void find(typed)
    const { say, next } = words.nothing
    sayRefused({ say: fill(say, { text: typed }), next })
  }
  return (
    <search ref={room} className="find-box" data-tour="find">
      <form
        onSubmit={(event) => {
          event.preventDefault()
          void submit()
        }}
      >
        <KeyCap>Ctrl+K</KeyCap>
        <input
          ref={input}
          className="entry numbers"
          aria-label={words.label}
          aria-keyshortcuts="Control+K"
          placeholder={words.placeholder}
          maxLength={40}
          autoComplete="off"
          spellCheck={false}
          value={text}
          onChange={(event) => setText(event.target.value)}
        />
      </form>
      <Hits hits={hits} onOpen={open} onClose={() => setText('')} />
      {found && hits.length === 0 && (
        <FoundNote key={found.number} found={found} onStory={setStory} onClose={clear} />
      )}
      {story && (
        <Suspense fallback={null}>
          <FoundStory of={story} onClose={() => setStory(undefined)} />
        </Suspense>
      )}
    </search>
  )
}

/** A scan passes through the field faster than this; what it leaves is not asked for. */
const settlesMs = 120

/** What begins with the letters typed, once they have settled. */
function useHits(text: string): readonly SeekHit[] {
  const [settled, setSettled] = useState('')
  useEffect(() => {
    const timer = setTimeout(() => setSettled(text.trim()), settlesMs)
    return () => clearTimeout(timer)
  }, [text])
  const isAsked = settled.length >= 2 && text.trim() !== ''
  const { data } = useAsk('seek', { text: settled }, { enabled: isAsked })
  return isAsked ? (data?.hits ?? []) : []
}

/** Up and down go from the field through what was found, and back. */
function useSteps(room: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const box = room.current
    const onKey = (event: KeyboardEvent) => step(event, box)
    box?.addEventListener('keydown', onKey)
    return () => box?.removeEventListener('keydown', onKey)
  }, [room])
}

function step(event: KeyboardEvent, room: HTMLElement | null): void {
  const by = { ArrowDown: 1, ArrowUp: -1 }[event.key]
  const stops = [...(room?.querySelectorAll<HTMLElement>('input, .find-hit') ?? [])]
  if (by === undefined || stops.length < 2) return
  event.preventDefault()
  const place = stops.findIndex((stop) => stop === document.activeElement)
  stops[Math.min(stops.length - 1, Math.max(0, place + by))]?.focus()
}

function Hits(props: {
  hits: readonly SeekHit[]
  onOpen: (of: StoryOf) => void
  onClose: () => void
}) {
  const { hits } = props
  return (
    <>
      <p role="status" className="unseen">
        {hits.length > 0 && fill(words.count, { count: hits.length })}
      </p>
      {hits.length > 0 && (
        <div className="found-note find-hits" data-keys>
          <ul aria-label={words.found}>
            {hits.map((hit) => (
              <li key={hit.title}>
                <button type="button" className="find-hit" onClick={() => props.onOpen(hit.of)}>
                  <b>{hit.title}</b> <span>{hit.say}</span>
                </button>
              </li>
            ))}
          </ul>
          <Button keyHint="Esc" onPress={props.onClose}>
            {words.close}
          </Button>
        </div>
      )}
    </>
  )
}

function FoundNote(props: { found: Found; onStory: (of: StoryOf) => void; onClose: () => void }) {
  const { found, onClose } = props
  return (
    <div className="found-note" data-keys>
      <p>
        <NumberText number={found.number} />
      </p>
      <p>{found.say}</p>
      <div className="row">
        <Button
          kind="main"
          keyHint="Alt+G"
          onPress={() => {
            go(found.screen, found.about)
            onClose()
          }}
        >
          {fill(words.go, { screen: screenWords(found.screen) })}
        </Button>
        <Button
          keyHint="Alt+H"
          onPress={() => {
            props.onStory({ is: 'number', number: found.number })
            onClose()
          }}
        >
          {words.story}
        </Button>
        <Button keyHint="Esc" onPress={onClose}>
          {words.close}
        </Button>
      </div>
    </div>
  )
}
