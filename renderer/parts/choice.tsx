import { type ReactNode, useId, useRef, useState } from 'react'
import { useKey } from '../scanner/keys.ts'
import './choice.css'
import { KeyCap } from './key-cap.tsx'
import { useFocus } from './use-focus.ts'

export interface ChoiceOption<T extends string> {
  value: T
  label: ReactNode
  hint?: ReactNode
  /** Picks this one while the focus is in the choice. */
  key?: string
}

export interface ChoiceProps<T extends string> {
  label: string
  options: readonly ChoiceOption<T>[]
  /** Null before the first pick. */
  value: T | null
  onChange: (value: T) => void
  hint?: string
  error?: string
  autoFocus?: boolean
}

/**
 * One of several, as big tiles: arrow keys, Space, or the key shown on a tile. `onSettle` hears Enter
 * or a tap on a tile, after `onChange`: the person is done choosing.
 */
export function Choice<T extends string>(
  props: ChoiceProps<T> & { onSettle?: (value: T) => void },
) {
  const name = useId()
  // Only the pick it opened with draws the focus: a later one must not pull it back from the next field.
  const [opening] = useState(props.value)
  return (
    <ChoiceFrame {...props}>
      {props.options.map((option, place) => (
        <Tile
          key={option.value}
          type="radio"
          name={name}
          option={option}
          isPicked={option.value === props.value}
          autoFocus={props.autoFocus && (opening === null ? place === 0 : option.value === opening)}
          onPick={() => props.onChange(option.value)}
          onSettle={props.onSettle && (() => props.onSettle?.(option.value))}
        />
      ))}
    </ChoiceFrame>
  )
}

export interface ManyChoiceProps<T extends string>
  extends Omit<ChoiceProps<T>, 'value' | 'onChange'> {
  value: readonly T[]
  onChange: (value: T[]) => void
}

/** Any number of several, in the order of the options. */
export function ManyChoice<T extends string>(props: ManyChoiceProps<T>) {
  const name = useId()
  const { options, value, onChange } = props
  function turn(turned: T) {
    const picked = options
      .map((option) => option.value)
      .filter((each) => value.includes(each) !== (each === turned))
    onChange(picked)
  }
  return (
    <ChoiceFrame {...props}>
      {options.map((option, place) => (
        <Tile
          key={option.value}
          type="checkbox"
          name={name}
          option={option}
          isPicked={value.includes(option.value)}
          autoFocus={props.autoFocus && place === 0}
          onPick={() => turn(option.value)}
        />
      ))}
    </ChoiceFrame>
  )
}

function ChoiceFrame(props: { label: string; hint?: string; error?: string; children: ReactNode }) {
  const id = useId()
  return (
    <fieldset className="choice" data-keys aria-describedby={`${id}-hint ${id}-error`}>
      <legend>{props.label}</legend>
      <div className="choice-tiles">{props.children}</div>
      <p id={`${id}-hint`} className="field-hint">
        {props.hint}
      </p>
      <p id={`${id}-error`} className="field-error">
        {props.error}
      </p>
    </fieldset>
  )
}

function Tile<T extends string>(props: {
  type: 'radio' | 'checkbox'
  name: string
  option: ChoiceOption<T>
  isPicked: boolean
  autoFocus: boolean | undefined
  onPick: () => void
  onSettle?: (() => void) | undefined
}) {
  const { type, name, option, isPicked } = props
  const input = useRef<HTMLInputElement>(null)
  useFocus(input, props.autoFocus ?? false)
  useKey(option.key, input, () => {
    input.current?.focus()
    props.onPick()
  })
  return (
    <label className={`tile tile-${type}${isPicked ? ' tile-picked' : ''}`}>
      <input
        ref={input}
        type={type}
        name={name}
        checked={isPicked}
        onChange={props.onPick}
        // Arrow keys click too, but with no button pressed: detail is then 0.
        onClick={(event) => event.detail > 0 && props.onSettle?.()}
        onKeyDown={(event) => {
          if (event.key !== 'Enter' || props.onSettle === undefined) return
          event.preventDefault()
          props.onPick()
          props.onSettle()
        }}
        aria-keyshortcuts={option.key}
      />
      <span>
        {option.label}
        {option.hint && <small className="tile-hint">{option.hint}</small>}
      </span>
      {option.key && <KeyCap>{option.key}</KeyCap>}
    </label>
  )
}
