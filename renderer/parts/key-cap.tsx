import './key-cap.css'

/** A key as drawn on the screen; the control it belongs to tells screen readers by itself. */
export function KeyCap(props: { children: string }) {
  return (
    <kbd className="key-cap" aria-hidden="true">
      {props.children}
    </kbd>
  )
}
