/** One list, one stop of the Tab key: arrow keys move the choice and the focus within it. */
import { type KeyboardEvent, useEffect, useRef, useState } from 'react'

const steps: Record<string, number> = {
  ArrowDown: 1,
  ArrowUp: -1,
  PageDown: 8,
  PageUp: -8,
  Home: Number.NEGATIVE_INFINITY,
  End: Number.POSITIVE_INFINITY,
}

/** The key a step away from `from`, held within the list. */
function stepped(keys: readonly string[], from: string | undefined, step: number) {
  const place = keys.indexOf(from ?? '') + step
  return keys[Math.min(keys.length - 1, Math.max(0, place))]
}

export type Roving = ReturnType<typeof useRoving>

/**
 * Which row is chosen, the first until the person moves. A row that leaves the list while it has
 * the focus hands it to the row that takes its place.
 */
export function useRoving(keys: readonly string[]) {
  const [wanted, setWanted] = useState<string>()
  const [lastPlace, setLastPlace] = useState(0)
  const rows = useRef(new Map<string, HTMLElement>())
  const heldFocus = useRef(false)
  /** A row that is to have the focus as soon as it is drawn: a long list draws only what is in sight. */
  const awaited = useRef<string>(undefined)
  const isThere = wanted !== undefined && keys.includes(wanted)
  const chosen = isThere ? wanted : keys[Math.min(lastPlace, keys.length - 1)]

  function choose(key: string) {
    setWanted(key)
    setLastPlace(Math.max(0, keys.indexOf(key)))
  }
  function focus(key: string | undefined) {
    if (key === undefined) return
    choose(key)
    const row = rows.current.get(key)
    awaited.current = row === undefined ? key : undefined
    row?.focus()
  }
  useEffect(() => {
    const isFocusLost = document.activeElement === document.body
    if (heldFocus.current && isFocusLost && chosen !== undefined) rows.current.get(chosen)?.focus()
  }, [chosen])

  function rowProps(key: string, onAside?: () => void) {
    return {
      ref: (row: HTMLElement | null) => {
        if (row) rows.current.set(key, row)
        else rows.current.delete(key)
        if (row === null || awaited.current !== key) return
        awaited.current = undefined
        row.focus()
      },
      tabIndex: key === chosen ? 0 : -1,
      onFocus: () => {
        heldFocus.current = true
        choose(key)
      },
      onBlur: (event: { relatedTarget: EventTarget | null }) => {
        heldFocus.current = event.relatedTarget === null
      },
      onKeyDown: (event: KeyboardEvent) => {
        if (event.key === 'ArrowLeft' || event.key === 'ArrowRight') onAside?.()
        const step = steps[event.key]
        if (step === undefined || event.altKey || event.ctrlKey) return
        event.preventDefault()
        focus(stepped(keys, key, step))
      },
    }
  }
  return { chosen, focus, rowProps }
}

/** Opens a screen with the focus on the chosen row of its first list. */
export function useFirstFocus(first: Roving): void {
  const opened = useRef(first)
  useEffect(() => {
    const { focus, chosen } = opened.current
    focus(chosen)
  }, [])
}
