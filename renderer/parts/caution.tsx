import type { ReactNode } from 'react'
import './caution.css'
import { Shape } from './shape.tsx'

/** A usual caution of the trade where the work can hurt someone; it defers to local rules. */
export function Caution(props: { title: string; children: ReactNode }) {
  return (
    <aside className="caution" aria-label={`Caution: ${props.title}`}>
      <p className="caution-title">
        <Shape kind="now" /> Caution: {props.title}
      </p>
      <div>{props.children}</div>
    </aside>
  )
}
