import type { DiscrepancyView } from '../../shared-types/views/merge.ts'
import { Badge } from '../parts/badge.tsx'

/** Whether a discrepancy is settled, in a word with its shape. */
export function StateBadge(props: { state: DiscrepancyView['state'] }) {
  switch (props.state) {
    case 'open':
      return <Badge shape="soon">to settle</Badge>
    case 'settled':
      return <Badge shape="fine">settled</Badge>
    case 'settled-differently':
      return <Badge shape="now">settled differently</Badge>
  }
}
