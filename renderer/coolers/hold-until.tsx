import { useNow } from '../desk/use-now.ts'
import { Badge } from '../parts/badge.tsx'
import type { ShapeKind } from '../parts/shape.tsx'
import { Time } from '../parts/time.tsx'

/** From here on the limit is marked as near: time enough to make ice or reach a courier. */
const nearMs = 6 * 3_600_000

/**
 * The hold clock of a bag or a cooler.
 * `isUnderHead`: a heading already says freeze or deliver by.
 */
export function HoldUntil(props: { ms: number | null; isUnderHead?: boolean }) {
  const now = useNow(60_000)
  if (props.ms === null) return <Badge shape="idle">no time limit</Badge>
  const shape = nearness(props.ms - now)
  const until = shape === 'now' ? 'now, limit was ' : props.isUnderHead ? '' : 'by '
  return (
    <Badge shape={shape}>
      <span>
        {!props.isUnderHead && 'freeze or deliver '}
        {until}
        <span className="cooler-hold-time">
          <Time ms={props.ms} />
        </span>
      </span>
    </Badge>
  )
}

function nearness(leftMs: number): ShapeKind {
  if (leftMs <= 0) return 'now'
  return leftMs < nearMs ? 'soon' : 'fine'
}
