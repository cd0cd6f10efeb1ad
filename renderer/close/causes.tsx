import { useState } from 'react'
import type { Bridge } from '../../shared-types/bridge.ts'
import type { Refusal } from '../../shared-types/result.ts'
import type { Cause, Settle } from '../../shared-types/views/cause.ts'
import { callDesk } from '../desk/answer.ts'
import { useConnection } from '../desk/desk-provider.tsx'
import { go } from '../desk/place.ts'
import { useMay } from '../desk/use-desk.ts'
import { Badge } from '../parts/badge.tsx'
import { Button } from '../parts/button.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'

/** The keys of the cause listed first; those after it are reached with Tab. */
interface Keys {
  look: string
  settle: string
}

/** What the log suggests, the best borne out first: one key to look, one to settle. */
export function Causes(props: { causes: readonly Cause[]; keys: Keys; onSettled?: () => void }) {
  const { causes, keys, onSettled } = props
  if (causes.length === 0) return null
  return (
    <ul className="close-causes" aria-label="Likely causes, by the log">
      {causes.map((cause, place) => (
        <li key={`${cause.code} ${cause.about}`}>
          <CauseRow cause={cause} keys={place === 0 ? keys : undefined} onSettled={onSettled} />
        </li>
      ))}
    </ul>
  )
}

/** How well a cause is borne out, in a word. */
function likelihood(evidence: number): string {
  if (evidence >= 80) return 'likely'
  return evidence >= 60 ? 'possible' : 'perhaps'
}

const settleWords: Record<Settle['command'], string> = {
  'variance.explain': 'That is it',
  'bag.place': 'It is in there',
  'bag.takeOut': 'Take it out in the log',
  'kit.spoil': 'Record it as spoiled',
  'animal.finish': 'Finish the animal',
}

function CauseRow(props: {
  cause: Cause
  keys: Keys | undefined
  onSettled: (() => void) | undefined
}) {
  const { cause, keys, onSettled } = props
  const { settle, look } = cause
  const connection = useConnection()
  const [refusal, setRefusal] = useState<Refusal>()
  const may = useMay(settle?.command ?? 'variance.explain')
  async function settleIt(given: Settle) {
    const answer = await giveSettle(connection, given)
    setRefusal(answer.ok ? undefined : answer.refusal)
    if (!answer.ok) return sayRefused(answer.refusal)
    sayDone(`${settleWords[given.command]}: done.`)
    onSettled?.()
  }
  return (
    <>
      <p>
        <Badge shape={cause.evidence >= 80 ? 'soon' : 'idle'}>{likelihood(cause.evidence)}</Badge>{' '}
        {cause.say} {cause.next}
      </p>
      <div className="row">
        <Button
          keyHint={keys?.look}
          label={`Look: ${cause.say}`}
          onPress={() => go(look.screen, look.number ?? undefined)}
        >
          Look
        </Button>
        {settle && (
          <Button
            keyHint={keys?.settle}
            isDisabled={!may}
            why="the lead settles it"
            label={`${settleWords[settle.command]}: ${cause.say}`}
            onPress={() => void settleIt(settle)}
          >
            {settleWords[settle.command]}
          </Button>
        )}
      </div>
      <RefusalNote refusal={refusal} />
    </>
  )
}

function giveSettle(connection: Bridge, { command, input }: Settle) {
  switch (command) {
    case 'variance.explain':
      return callDesk(connection, command, input)
    case 'bag.place':
      return callDesk(connection, command, input)
    case 'bag.takeOut':
      return callDesk(connection, command, input)
    case 'kit.spoil':
      return callDesk(connection, command, input)
    case 'animal.finish':
      return callDesk(connection, command, input)
  }
}
