import { grouped } from '../../shared-types/sample-number.ts'
import type { HoldView } from '../../shared-types/views/cold.ts'
import { nothing, useAsk } from '../desk/use-desk.ts'
import { Panel } from '../parts/panel.tsx'
import { Time } from '../parts/time.tsx'
import { HoldUntil } from './hold-until.tsx'

/** What must be frozen or delivered next, the most urgent first. */
export function HoldLine() {
  const { data } = useAsk('hold', nothing, { everyMs: 60_000 })
  if (data === undefined || data.items.length === 0) return null
  return (
    <Panel title="Freeze or deliver next">
      <ol className="hold-line">
        {data.items.map((item) => (
          <Item key={item.cooler ?? 'bench'} item={item} />
        ))}
      </ol>
    </Panel>
  )
}

function Item(props: { item: HoldView['items'][number] }) {
  const { name, untilMs, bags, of, lastMs } = props.item
  const [first] = bags
  return (
    <li>
      <b>
        {name}: {of === 1 && first ? grouped(first) : `${bags.length} of ${of} bags`}
      </b>
      {bags.length > 1 && (
        <span>
          {' '}
          due by <Time ms={lastMs} />, the first
        </span>
      )}
      <HoldUntil ms={untilMs} isUnderHead />
    </li>
  )
}
