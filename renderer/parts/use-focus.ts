import { type RefObject, useEffect } from 'react'

/** Puts the focus on a control when `when` becomes true: a screen opens on its first field. */
export function useFocus(control: RefObject<HTMLElement | null>, when: boolean): void {
  useEffect(() => {
    if (when) control.current?.focus()
  }, [control, when])
}
