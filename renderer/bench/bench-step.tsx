import { type ReactNode, useId, useRef } from 'react'
import type { Refusal } from '../../shared-types/result.ts'
import { Shape } from '../parts/shape.tsx'
import { useFocus } from '../parts/use-focus.ts'

/**
 * The one thing to do now. Its heading takes the focus, so that it is read out and its keys work,
 * unless something in it is `focused` by itself.
 */
export function BenchStep(props: {
  title: string
  focused?: boolean
  refusal?: Refusal | undefined
  children: ReactNode
}) {
  const id = useId()
  const head = useRef<HTMLHeadingElement>(null)
  useFocus(head, props.focused !== true)
  return (
    <section className="bench-step" aria-labelledby={id} data-keys>
      <h2 id={id} ref={head} tabIndex={-1}>
        {props.title}
      </h2>
      {props.refusal && <Refused refusal={props.refusal} />}
      {props.children}
    </section>
  )
}

/** The desk's sentence, large: the strip has read it out already, so it is not announced again. */
function Refused({ refusal }: { readonly refusal: Refusal }) {
  return (
    <div className="notice notice-refusal bench-refusal">
      <Shape kind="now" />
      <div>
        <p>{refusal.say}</p>
        <p className="notice-next">{refusal.next}</p>
      </div>
    </div>
  )
}
