import { useRef, useState } from 'react'
import { go } from '../desk/place.ts'
import { Button } from '../parts/button.tsx'
import { KeyCap } from '../parts/key-cap.tsx'
import { NumberText } from '../parts/number-text.tsx'
import { useKey } from '../scanner/keys.ts'
import { useScanFallback } from '../scanner/scans.ts'
import './find-box.css'
import { screenWords } from './screens.ts'
import { type Found, useFind } from './use-find.ts'

/** Finds what a number is, typed here or scanned where no screen wanted it, and offers to go there. */
export function FindBox() {
  const input = useRef<HTMLInputElement>(null)
  const [text, setText] = useState('')
  const { found, find, clear } = useFind()
  useKey('Ctrl+K', input, () => input.current?.focus())
  useScanFallback((scanned) => void find(scanned))
  async function submit() {
    if (text.trim() !== '' && (await find(text))) setText('')
  }
  return (
    <search className="find-box" data-tour="find">
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
          aria-label="Find a number: type it, or scan a label"
          aria-keyshortcuts="Control+K"
          placeholder="Find a number"
          maxLength={80}
          autoComplete="off"
          spellCheck={false}
          value={text}
          onChange={(event) => setText(event.target.value)}
        />
      </form>
      {found && <FoundNote key={found.number} found={found} onClose={clear} />}
    </search>
  )
}

function FoundNote(props: { found: Found; onClose: () => void }) {
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
          Go to {screenWords(found.screen)}
        </Button>
        <Button keyHint="Esc" onPress={onClose}>
          Close
        </Button>
      </div>
    </div>
  )
}
