import { type ReactNode, useId } from 'react'
import './field.css'
import { Shape } from './shape.tsx'

/** The ids a control inside a field must carry to be named and described by it. */
export interface FieldIds {
  id: string
  'aria-describedby': string | undefined
  'aria-invalid': boolean
}

/** A label, a hint and an error around one control. */
export function Field(props: {
  label: string
  hint?: string
  error?: string
  children: (ids: FieldIds) => ReactNode
}) {
  const id = useId()
  const described = [props.hint && `${id}-hint`, props.error && `${id}-error`].filter(Boolean)
  const ids = {
    id,
    'aria-describedby': described.length > 0 ? described.join(' ') : undefined,
    'aria-invalid': props.error !== undefined,
  }
  return (
    <div className="field">
      <label htmlFor={id}>{props.label}</label>
      {props.children(ids)}
      {props.hint && (
        <p id={`${id}-hint`} className="field-hint">
          {props.hint}
        </p>
      )}
      {props.error && (
        <p id={`${id}-error`} className="field-error">
          <Shape kind="now" /> {props.error}
        </p>
      )}
    </div>
  )
}
