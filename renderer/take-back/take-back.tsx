import { useRef } from 'react'
import { fill } from '../../shared-types/fill.ts'
import { nothing, useAsk, useTell } from '../desk/use-desk.ts'
import { useNow } from '../desk/use-now.ts'
import { Button } from '../parts/button.tsx'
import { useKey } from '../scanner/keys.ts'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import './take-back.css'
import { takeBackWords as words } from './words.ts'

/** A chord: a letter alone belongs to scanners and to fields (WCAG 2.1.4, character key shortcuts). */
const key = 'Ctrl+U'

/** Offers to take the last slip back for a minute; the key answers at any time, if only with why not. */
export function TakeBack() {
  const room = useRef<HTMLDivElement>(null)
  const slip = useAsk('slip', nothing).data?.slip
  const nowMs = useNow(1000)
  const { tell, busy } = useTell('slip.takeBack')
  async function takeBack() {
    const answer = await tell({})
    if (answer.ok) sayDone(fill(words.done, answer.value))
    else sayRefused(answer.refusal)
  }
  const secondsLeft = slip ? Math.ceil((slip.untilMs - nowMs) / 1000) : 0
  const isOffered = slip !== undefined && slip !== null && secondsLeft > 0
  useKey(isOffered ? undefined : key, room, () => void takeBack())
  return (
    <div ref={room} className="take-back">
      {isOffered && (
        <Button keyHint={key} isDisabled={busy} onPress={() => void takeBack()}>
          {fill(words.offer, slip)}{' '}
          <span className="numbers take-back-left">
            {fill(words.left, { seconds: Math.min(60, secondsLeft) })}
          </span>
        </Button>
      )}
    </div>
  )
}
