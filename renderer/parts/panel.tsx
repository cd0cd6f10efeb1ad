import { type ReactNode, useId } from 'react'
import './panel.css'

/** A part of a screen with its heading, and its own buttons at the right of it. */
export function Panel(props: {
  title: string
  /** How many there are, beside the title. */
  count?: number
  /** A few words beside the title. */
  note?: string
  actions?: ReactNode
  children: ReactNode
}) {
  const id = useId()
  return (
    <section className="panel" aria-labelledby={id} data-keys>
      <header className="panel-head">
        <h2 id={id}>
          {props.title}
          {props.count !== undefined && <span className="panel-count numbers"> {props.count}</span>}
          {props.note && <span className="panel-note"> {props.note}</span>}
        </h2>
        {props.actions && <div className="row">{props.actions}</div>}
      </header>
      <div className="panel-body">{props.children}</div>
    </section>
  )
}
