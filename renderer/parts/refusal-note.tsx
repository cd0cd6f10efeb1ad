import { useEffect, useRef } from 'react'
import type { Refusal } from '../../shared-types/result.ts'
import { HelpLink } from '../help/help-link.tsx'
import './notice.css'
import { Shape } from './shape.tsx'

/** Why the desk will not do it, and what to do now. Nothing while there is no refusal. */
export function RefusalNote(props: { refusal: Refusal | undefined }) {
  const { refusal } = props
  const note = useRef<HTMLDivElement>(null)
  useEffect(() => {
    // The field at fault takes the focus itself; without one, the note does.
    if (refusal !== undefined && refusal.field === undefined) note.current?.focus()
  }, [refusal])
  return (
    <div role="alert" className="refusal-room">
      {refusal && (
        <div ref={note} tabIndex={-1} className="notice notice-refusal" data-refusal={refusal.code}>
          <Shape kind="now" />
          <div>
            <p>{refusal.say}</p>
            <p className="notice-next">
              {refusal.next} <HelpLink code={refusal.code} />
            </p>
          </div>
        </div>
      )}
    </div>
  )
}
