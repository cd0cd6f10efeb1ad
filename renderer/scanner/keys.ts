/** Keys that press something on the screen, told apart from a scanner's typing. */
import { type RefObject, useEffect, useLayoutEffect, useRef } from 'react'
import { isTextField } from './field-memory.ts'

interface Binding {
  readonly key: string
  readonly element: RefObject<Element | null>
  readonly press: RefObject<() => void>
  /** Also while a dialog is open that it does not belong to. */
  readonly isEverywhere: boolean
}

const bindings: Binding[] = []

/** The name of a key press as written on the screen: `F2`, `Ctrl+K`, `Esc`, `a`. */
export function keyName(
  event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey'>,
): string {
  const key = event.key === 'Escape' ? 'Esc' : event.key
  if (event.ctrlKey || event.metaKey) return `Ctrl+${key.toUpperCase()}`
  return event.altKey ? `Alt+${key.toUpperCase()}` : key
}

/** One character alone: the kind of key that a scanner types too. */
export function isSingle(key: string): boolean {
  return key.length === 1
}

/**
 * A single character works only while the focus is inside its own part of the screen (`data-keys`)
 * and not in a text field, so that speech input and stray keys do nothing (WCAG 2.1.4).
 */
function isWithinReach(binding: Binding): boolean {
  const focused = document.activeElement
  if (!isSingle(binding.key)) return true
  if (focused === null || isTextField(focused)) return false
  return binding.element.current?.closest('[data-keys]')?.contains(focused) ?? false
}

const openDialog = () => [...document.querySelectorAll('[data-dialog]')].at(-1)

/** While a dialog is open, only its own keys work. */
function isReachable(binding: Binding): boolean {
  const dialog = openDialog()
  const isOutside = dialog !== undefined && !dialog.contains(binding.element.current)
  if (isOutside && !binding.isEverywhere) return false
  return isWithinReach(binding)
}

/**
 * A dialog has the whole attention: a character that means one thing in it does so wherever in it the
 * focus is, also while the focus is still on its way from the button that opened it.
 */
function onlyOneInDialog(name: string): Binding | undefined {
  const dialog = openDialog()
  const focused = document.activeElement
  if (!dialog || !isSingle(name) || (focused && isTextField(focused))) return undefined
  const meant = bindings.filter(
    ({ key, element }) => key === name && dialog.contains(element.current),
  )
  return meant.length === 1 ? meant[0] : undefined
}

/** Presses what is bound to a key, the one shown last first; false when nothing is. */
export function pressKey(key: string): boolean {
  const name = isSingle(key) ? key.toLowerCase() : key
  const bound =
    bindings.findLast((each) => each.key === name && isReachable(each)) ?? onlyOneInDialog(name)
  bound?.press.current()
  return bound !== undefined
}

/** Binds a key to an element while it is mounted. `Enter` is left to forms and focused buttons. */
export function useKey(
  key: string | undefined,
  element: RefObject<Element | null>,
  press: () => void,
  isEverywhere = false,
): void {
  const latest = useRef(press)
  useEffect(() => {
    latest.current = press
  })
  // Bound in the same frame as the element is drawn: whoever sees it may press its key.
  useLayoutEffect(() => {
    if (key === undefined || key === 'Enter') return
    const name = isSingle(key) ? key.toLowerCase() : key
    const binding = { key: name, element, press: latest, isEverywhere }
    bindings.push(binding)
    return () => {
      bindings.splice(bindings.indexOf(binding), 1)
    }
  }, [key, element, isEverywhere])
}

/** What answers to a key now: the key, and the element that it presses. In an open dialog, only that one's. */
export function keysNow(): { key: string; element: Element }[] {
  const dialog = openDialog()
  return bindings.flatMap(({ key, element, isEverywhere }) => {
    const shown = element.current
    if (shown === null || shown.closest('[hidden]') !== null) return []
    return dialog === undefined || dialog.contains(shown) || isEverywhere
      ? [{ key, element: shown }]
      : []
  })
}
