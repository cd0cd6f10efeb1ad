import type { CoolerView } from '../../shared-types/views/coolers.ts'
import { Badge } from '../parts/badge.tsx'

/** Whether a cooler takes bags, is sealed, or has left. */
export function CoolerStateBadge(props: { cooler: Pick<CoolerView, 'state' | 'seal'> }) {
  const { state, seal } = props.cooler
  if (state === 'open') return <Badge shape="fine">open</Badge>
  if (state === 'handed-off') return <Badge shape="idle">with the courier</Badge>
  return (
    <Badge shape="soon">
      <span>
        sealed <span className="numbers">{seal}</span>
      </span>
    </Badge>
  )
}
