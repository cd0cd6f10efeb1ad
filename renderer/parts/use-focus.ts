import { type RefObject, useEffect, useLayoutEffect } from 'react'

/** Puts the focus on a control when `when` becomes true: a screen opens on its first field. */
export function useFocus(control: RefObject<HTMLElement | null>, when: boolean): void {
  // In the same frame as the control is drawn, so that a quick key meets it.
  useLayoutEffect(() => {
    if (when) control.current?.focus()
  }, [control, when])
}

/** Puts the focus on a field that turned out wrong, if it is the first such field of its form. */
export function useErrorFocus(
  field: RefObject<HTMLInputElement | HTMLTextAreaElement | null>,
  error: string | undefined,
): void {
  useEffect(() => {
    if (error === undefined) return
    const first = field.current?.form?.querySelector('[aria-invalid="true"]')
    if (first === undefined || first === null || first === field.current) field.current?.focus()
  }, [field, error])
}
