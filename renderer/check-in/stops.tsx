/** Where the Enter key stops on its way through the questions. */
import type { KeyboardEvent, ReactNode } from 'react'
import { type Step, steps } from './draft.ts'

/** One question; Enter in it moves on to the next one on the screen. */
export function Stop(props: { step: Step; children: ReactNode }) {
  return (
    <div data-step={props.step} className={`stop stop-${props.step}`}>
      {props.children}
    </div>
  )
}

function stopOf(element: Element): HTMLElement | null {
  return element.closest<HTMLElement>('[data-step]')
}

/** The question an element belongs to. */
export function stepOf(element: Element): Step | undefined {
  return steps.find((step) => step === stopOf(element)?.dataset.step)
}

function enter(stop: Element | undefined): void {
  const control =
    stop?.querySelector<HTMLInputElement>('input:checked') ??
    stop?.querySelector<HTMLInputElement>('input')
  control?.focus()
  if (control?.type === 'text') control.select()
}

/** Puts the focus into a question: on what is chosen there, or on the whole text, ready to be replaced. */
export function focusStep(form: HTMLElement, step: Step): void {
  enter(form.querySelector(`[data-step="${step}"]`) ?? undefined)
}

/** Enter in a question moves on; after the last one, to the form's own button. */
export function moveOn(event: KeyboardEvent): void {
  const { target } = event
  if (event.key !== 'Enter' || event.ctrlKey || !(target instanceof HTMLInputElement)) return
  event.preventDefault()
  const here = stopOf(target)
  const stops = [...(target.form?.querySelectorAll('[data-step]') ?? [])]
  const next = here ? stops[stops.indexOf(here) + 1] : undefined
  if (next) enter(next)
  else target.form?.querySelector<HTMLButtonElement>('button[type="submit"]')?.focus()
}
