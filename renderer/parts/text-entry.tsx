import { useRef } from 'react'
import { Field } from './field.tsx'
import { useErrorFocus, useFocus } from './use-focus.ts'

export interface TextEntryProps {
  label: string
  value: string
  onChange: (value: string) => void
  hint?: string
  error?: string
  autoFocus?: boolean
  inputMode?: 'text' | 'numeric' | 'decimal' | 'tel' | 'email'
  /** Enter in this field; a form's own button hears it anyway. */
  onEnter?: () => void
  /** A scan that is not one of our numbers stays in this field: a tag, a hunter's licence, a seal. */
  takesScan?: boolean
  /** Tabular figures with a slashed zero, for numbers and codes. */
  numbers?: boolean
  isSecret?: boolean
  maxLength?: number
  type?: 'text' | 'date' | 'time'
  /** Words offered while typing. */
  offers?: readonly string[]
}

/** One line of text. Focused with `autoFocus`, or when an error appears in it. */
export function TextEntry(props: TextEntryProps) {
  const input = useRef<HTMLInputElement>(null)
  useFocus(input, props.autoFocus ?? false)
  useErrorFocus(input, props.error)
  return (
    <Field label={props.label} hint={props.hint} error={props.error}>
      {(ids) => (
        <>
          <input
            {...ids}
            ref={input}
            className={props.numbers ? 'entry numbers' : 'entry'}
            type={props.isSecret ? 'password' : (props.type ?? 'text')}
            value={props.value}
            inputMode={props.inputMode}
            maxLength={props.maxLength}
            list={props.offers && `${ids.id}-offers`}
            data-takes-scan={props.takesScan ? '' : undefined}
            autoComplete="off"
            spellCheck={false}
            onChange={(event) => props.onChange(event.target.value)}
            onKeyDown={(event) => {
              if (event.key !== 'Enter' || props.onEnter === undefined) return
              event.preventDefault()
              props.onEnter()
            }}
          />
          {props.offers && (
            <datalist id={`${ids.id}-offers`}>
              {props.offers.map((offer) => (
                <option key={offer} value={offer}>
                  {offer}
                </option>
              ))}
            </datalist>
          )}
        </>
      )}
    </Field>
  )
}
