import { Field } from './field.tsx'

/** One of a long list, in one line: arrow keys or the first letters. For a few, use Choice. */
export function Pick<T extends string>(props: {
  label: string
  options: readonly { value: T; label: string }[]
  /** Null before the first pick. */
  value: T | null
  onChange: (value: T) => void
  /** What stands there before the first pick. */
  unpicked?: string
  hint?: string
  error?: string
}) {
  const { options, value } = props
  return (
    <Field label={props.label} hint={props.hint} error={props.error}>
      {(ids) => (
        <select
          {...ids}
          className="entry"
          value={value ?? ''}
          onChange={(event) => {
            const picked = options.find((each) => each.value === event.target.value)
            if (picked) props.onChange(picked.value)
          }}
        >
          {value === null && <option value="">{props.unpicked ?? 'choose'}</option>}
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      )}
    </Field>
  )
}
