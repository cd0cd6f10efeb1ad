import type { CoverageState } from '../../shared-types/views/coverage.ts'
import { stateShapes } from './words.ts'

/** The shape of a state within a picture, 14 units wide; its word stands beside it or in the key. */
export function StateMark(props: { state: CoverageState; x: number; y: number }) {
  const { state, x, y } = props
  const kind = stateShapes[state]
  return (
    <g transform={`translate(${x} ${y}) scale(0.875)`} className={`mark-${kind}`}>
      {kind === 'now' && <path d="M8 1 15.5 15H.5Z" />}
      {kind === 'soon' && <circle cx="8" cy="8" r="7" />}
      {kind === 'fine' && <rect x="1.5" y="1.5" width="13" height="13" />}
      {(kind === 'idle' || kind === 'busy') && <circle className="mark-ring" cx="8" cy="8" r="6" />}
      {kind === 'busy' && <path d="M8 1.5a6.5 6.5 0 0 0 0 13Z" />}
    </g>
  )
}
