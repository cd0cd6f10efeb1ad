import { type ReactNode, useId, useRef } from 'react'
import { useKey } from '../scanner/keys.ts'
import './button.css'
import { KeyCap } from './key-cap.tsx'
import { useFocus } from './use-focus.ts'

export interface ButtonProps {
  children: ReactNode
  /** `main`: the one thing to do here; `danger`: takes something away; `quiet`: all others. */
  kind?: 'main' | 'quiet' | 'danger'
  /**
   * Shown on the button and bound to it. `F2` and `Ctrl+K` work everywhere; a single character only
   * while the focus is in the same Panel, Choice or Dialog; `Enter` is shown and left to the form.
   */
  keyHint?: string
  /** Left out for a form's own button. */
  onPress?: () => void
  type?: 'button' | 'submit'
  isDisabled?: boolean
  /** Why it cannot be pressed, in a few words; shown while it is disabled. */
  why?: string
  /** Its key also answers while a dialog is open over it. */
  isKeyEverywhere?: boolean
  autoFocus?: boolean
  /** Read out in place of the words on it, where those stand for several things; starts with them. */
  label?: string
}

/** A big button. Disabled, it can still be reached and says why. */
export function Button(props: ButtonProps) {
  const { kind = 'quiet', type = 'button', isDisabled = false } = props
  const button = useRef<HTMLButtonElement>(null)
  const whyId = useId()
  const isWhyShown = isDisabled && props.why !== undefined
  useKey(props.keyHint, button, () => button.current?.click(), props.isKeyEverywhere)
  useFocus(button, props.autoFocus ?? false)
  return (
    <button
      ref={button}
      type={type}
      className={`button button-${kind}`}
      aria-disabled={isDisabled}
      aria-describedby={isWhyShown ? whyId : undefined}
      aria-keyshortcuts={props.keyHint?.replace('Ctrl', 'Control')}
      onClick={(event) => {
        if (isDisabled) event.preventDefault()
        else props.onPress?.()
      }}
    >
      {props.keyHint && <KeyCap>{props.keyHint}</KeyCap>}
      <span>
        <span aria-hidden={props.label !== undefined}>{props.children}</span>
        {props.label && <span className="unseen">{props.label}</span>}
        {isWhyShown && (
          <small id={whyId} className="button-why">
            {props.why}
          </small>
        )}
      </span>
    </button>
  )
}
