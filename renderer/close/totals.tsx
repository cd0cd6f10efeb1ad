import { Outcome, outcomeWords } from '../../shared-types/animal.ts'
import type { DayTotals } from '../../shared-types/views/line.ts'
import { Panel } from '../parts/panel.tsx'

/** The animals of the day, as the close sheet will tell them. */
export function Totals(props: { totals: DayTotals }) {
  const { totals } = props
  const facts: [string, number][] = [
    ['Checked in', totals.checkedIn],
    ...Outcome.options.map((outcome): [string, number] => [
      `Sampled: ${outcomeWords[outcome]}`,
      totals.outcomes[outcome],
    ]),
    ['Left unsampled', totals.left],
    ['Recorded only', totals.recorded],
  ]
  return (
    <Panel title="The day’s animals">
      <dl className="totals">
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
