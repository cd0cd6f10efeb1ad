import type { Cause } from '../../shared-types/views/cause.ts'
import type { Need } from '../../shared-types/views/common.ts'
import { go } from '../desk/place.ts'
import { screenWords } from '../frame/screens.ts'
import { Button } from '../parts/button.tsx'
import { Notice } from '../parts/notice.tsx'
import { Shape } from '../parts/shape.tsx'
import { Causes } from './causes.tsx'

/** What stands in the way of signing, the hardest first, each with one key to where it is settled. */
export function InTheWay(props: {
  needs: readonly Need[]
  /** Animals and bags that are left in between. */
  between: readonly Cause[]
  onHere: () => void
}) {
  const { needs, between, onHere } = props
  if (needs.length === 0)
    return (
      <Notice kind="good">Everything is counted and explained. The lead can sign below.</Notice>
    )
  return (
    <section className="close-needs" aria-labelledby="close-needs">
      <h2 id="close-needs">Before the lead can sign</h2>
      <ul>
        {needs.map((need, place) => (
          <li key={need.code}>
            <Shape kind={need.urgent ? 'now' : 'soon'} />
            <p>
              <b>{need.say}</b> {need.next}
            </p>
            <Button
              keyHint={`Alt+${place + 1}`}
              onPress={() => (need.screen === 'close' ? onHere() : go(need.screen))}
            >
              {need.screen === 'close' ? 'Go on here' : `Go to ${screenWords(need.screen)}`}
            </Button>
          </li>
        ))}
      </ul>
      <Causes causes={between} keys={{ look: 'Alt+J', settle: 'Alt+U' }} />
    </section>
  )
}
