import type { DayTotals } from '../../shared-types/views/line.ts'
import { Panel } from '../parts/panel.tsx'

/** The animals of the day, as the close sheet will tell them. */
export function Totals(props: { totals: DayTotals }) {
  const { totals } = props
  const facts: [string, number][] = [
    ['Checked in', totals.checkedIn],
    ['Both sides', totals.outcomes.both],
    ['One side', totals.outcomes.one],
    ['No sample', totals.outcomes.none],
    ['Left unsampled', totals.left],
    ['Recorded only', totals.recorded],
  ]
  return (
    <Panel title="The day’s animals">
      <dl className="close-totals">
        {facts.map(([words, count]) => (
          <div key={words}>
            <dt>{words}</dt>
            <dd className="numbers">{count}</dd>
          </div>
        ))}
      </dl>
    </Panel>
  )
}
