import './shape.css'

/** now: triangle; soon: dot; fine: square; busy: half disc; idle: ring. Always beside a word, never alone. */
export type ShapeKind = 'now' | 'soon' | 'fine' | 'busy' | 'idle'

const drawings: Record<ShapeKind, React.ReactNode> = {
  now: <path d="M8 1 15.5 15H.5Z" />,
  soon: <circle cx="8" cy="8" r="7" />,
  fine: <rect x="1.5" y="1.5" width="13" height="13" />,
  busy: (
    <>
      <circle cx="8" cy="8" r="6.75" fill="none" stroke="currentColor" strokeWidth="2" />
      <path d="M8 1.5a6.5 6.5 0 0 0 0 13Z" />
    </>
  ),
  idle: <circle cx="8" cy="8" r="5.75" fill="none" stroke="currentColor" strokeWidth="2.5" />,
}

/** The drawing that goes with a word of state; silent to screen readers, the word speaks. */
export function Shape(props: { kind: ShapeKind }) {
  return (
    <svg className={`shape shape-${props.kind}`} viewBox="0 0 16 16" aria-hidden="true">
      {drawings[props.kind]}
    </svg>
  )
}
