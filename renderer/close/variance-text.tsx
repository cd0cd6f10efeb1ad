import { varianceWords } from '../../shared-types/close.ts'
import type { CloseItem } from '../../shared-types/views/close.ts'
import { Badge } from '../parts/badge.tsx'

/** A variance with its sign: `+2`, `−3`, `0`, with a true minus. */
export function signed(variance: number): string {
  if (variance === 0) return '0'
  return variance > 0 ? `+${variance}` : `−${Math.abs(variance)}`
}

/** What the count says beside the log: sign, shape and words, never colour alone. */
export function VarianceText(props: { item: CloseItem }) {
  const { counted, expected, variance, explained } = props.item
  if (counted === null || variance === null) return <Badge shape="idle">not counted yet</Badge>
  if (variance === 0) return <Badge shape="fine">agrees with the log</Badge>
  const side = variance < 0 ? 'fewer' : 'more'
  return (
    <span className="close-variance">
      <Badge shape={explained ? 'idle' : 'now'}>
        <b className="numbers close-variance-sign">{signed(variance)}</b>
      </Badge>
      <span>
        {Math.abs(variance)} {side} than the log’s <b className="numbers">{expected}</b>
        {explained
          ? `: ${varianceWords[explained.reason]}${explained.words && `, ${explained.words}`}`
          : ', no reason yet'}
      </span>
    </span>
  )
}
