import { useState } from 'react'
import type { CallOutput } from '../../shared-types/desk-api.ts'
import { go } from '../desk/place.ts'
import { screenWords } from '../frame/screens.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { Shape } from '../parts/shape.tsx'
import './needs-band.css'

type Need = CallOutput<'line'>['needs'][number]

const shown = 3

/** What wants the lead now, in one band: what is wrong, what to do, and the key that goes there. */
export function NeedsBand(props: { needs: readonly Need[] }) {
  const [isAllOpen, setAllOpen] = useState(false)
  const needs = props.needs.toSorted((a, b) => Number(b.urgent) - Number(a.urgent))
  if (needs.length === 0)
    return (
      <p className="needs needs-none">
        <Shape kind="fine" /> Nothing needs you now.
      </p>
    )
  return (
    <section className="needs" aria-label="What needs you now">
      <ul className="needs-list">
        {needs.slice(0, shown).map((need, place) => (
          <NeedRow key={`${need.code} ${need.say}`} need={need} keyHint={`Alt+${place + 1}`} />
        ))}
      </ul>
      {needs.length > shown && (
        <Button keyHint="Alt+0" onPress={() => setAllOpen(true)}>
          {needs.length - shown} more
        </Button>
      )}
      {isAllOpen && (
        <Dialog title="What needs you now" onClose={() => setAllOpen(false)}>
          <ul className="stack">
            {needs.map((need) => (
              <NeedRow key={`${need.code} ${need.say}`} need={need} />
            ))}
          </ul>
        </Dialog>
      )}
    </section>
  )
}

function NeedRow(props: { need: Need; keyHint?: string }) {
  const { need, keyHint } = props
  return (
    <li className={need.urgent ? 'need need-now' : 'need need-soon'}>
      <p>
        <Shape kind={need.urgent ? 'now' : 'soon'} /> {need.urgent ? 'Now: ' : 'Soon: '}
        <strong>{need.say}</strong> {need.next}
      </p>
      {need.screen !== 'line' && (
        <Button keyHint={keyHint} onPress={() => go(need.screen)}>
          {screenWords(need.screen)}
        </Button>
      )}
    </li>
  )
}
