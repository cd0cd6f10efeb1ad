import { type RefObject, useRef, useState } from 'react'
import type { CallOutput } from '../../shared-types/desk-api.ts'
import type { LocalDate } from '../../shared-types/local-date.ts'
import type { CloseItem } from '../../shared-types/views/close.ts'
import { CountRow } from './count-row.tsx'
import { HandoverForm } from './handover-form.tsx'
import { InTheWay } from './in-the-way.tsx'
import { LabelTotals } from './label-totals.tsx'
import { type Step, nextStep, stepName } from './next-step.ts'
import { SignForm } from './sign-form.tsx'
import { PlacesMissing } from './places-missing.tsx'
import { Totals } from './totals.tsx'

/** The counts of an open day, one under the other; Enter leads from each to the next. */
export function OpenDay(props: { close: CallOutput<'close'>; date: LocalDate }) {
  const { close, date } = props
  const { items } = close
  const room = useRef<HTMLDivElement>(null)
  const { step, goTo, goOn } = useSteps(items, room)
  return (
    <div className="close-day" ref={room}>
      <InTheWay needs={close.open} between={close.between} onHere={() => goTo(nextStep(items))} />
      <PlacesMissing animals={close.placesMissing} />
      <section aria-labelledby="close-counts">
        <Progress items={items} />
        <ul className="close-counts">
          {items.map((item) => (
            <CountRow
              key={item.key}
              item={item}
              step={step}
              onDone={goOn}
              onExplain={(key) => goTo({ at: 'explain', key })}
            />
          ))}
        </ul>
      </section>
      <Totals totals={close.totals} />
      <LabelTotals labels={close.labels} />
      <HandoverForm date={date} />
      <SignForm
        date={date}
        second={close.second}
        open={close.open}
        isHere={step.at === 'sign'}
        onTooEarly={() => toTheWay(room.current)}
      />
    </div>
  )
}

/** Shows what stands in the way of signing: its first way out has the focus. */
function toTheWay(room: HTMLElement | null): void {
  room?.scrollIntoView({ block: 'start' })
  room?.querySelector<HTMLButtonElement>('.close-needs button')?.focus()
}

/**
 * The step that has the focus. It stays put while somebody types, even when another window counts the
 * same thing; only after the last count does it follow the list, to the first variance or the signature.
 */
function useSteps(items: readonly CloseItem[], room: RefObject<HTMLElement | null>) {
  const [held, setHeld] = useState<Step | undefined>(() => nextStep(items))
  function goTo(step: Step) {
    setHeld(step)
    const place = room.current?.querySelector(`[data-step="${stepName(step)}"]`)
    place?.querySelector<HTMLInputElement>('input:checked, input')?.focus()
  }
  function goOn(key: string) {
    const next = nextStep(items, key)
    setHeld(next.at === 'count' ? next : undefined)
  }
  return { step: held ?? nextStep(items), goTo, goOn }
}

function Progress(props: { items: readonly CloseItem[] }) {
  const { items } = props
  const counted = items.filter((item) => item.counted !== null).length
  return (
    <div className="close-progress">
      <h2 id="close-counts">
        Counted <span className="numbers">{counted}</span> of{' '}
        <span className="numbers">{items.length}</span>
      </h2>
      <progress value={counted} max={items.length} aria-labelledby="close-counts" />
      <p>
        Count what is there, type the number, press Enter. What the log expects is shown afterwards.
      </p>
    </div>
  )
}
