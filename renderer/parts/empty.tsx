import type { ReactNode } from 'react'
import './empty.css'

/** Stands where nothing is yet: what is so, and what to do about it. */
export function Empty(props: { say: string; next: ReactNode }) {
  return (
    <div className="empty">
      <p className="empty-say">{props.say}</p>
      <div>{props.next}</div>
    </div>
  )
}
