import { useRef } from 'react'
import { Field } from './field.tsx'
import { useErrorFocus } from './use-focus.ts'

/** A sentence or two in full view. Enter sends the form as in any other field: there are no line breaks. */
export function LongEntry(props: {
  label: string
  value: string
  onChange: (value: string) => void
  maxLength: number
  hint?: string
  error?: string
}) {
  const text = useRef<HTMLTextAreaElement>(null)
  useErrorFocus(text, props.error)
  return (
    <Field label={props.label} hint={props.hint} error={props.error}>
      {(ids) => (
        <textarea
          {...ids}
          ref={text}
          className="entry entry-long"
          rows={2}
          maxLength={props.maxLength}
          value={props.value}
          onChange={(event) => props.onChange(event.target.value.replace(/\s*\n\s*/g, ' '))}
          onKeyDown={(event) => {
            if (event.key !== 'Enter') return
            event.preventDefault()
            event.currentTarget.form?.requestSubmit()
          }}
        />
      )}
    </Field>
  )
}
