import type { CoolerView, ReadingView } from '../../shared-types/views/coolers.ts'
import { Panel } from '../parts/panel.tsx'
import { Table } from '../parts/table.tsx'
import { Time } from '../parts/time.tsx'
import { ReadingText } from './reading.tsx'
import { bothScales } from './temperature.ts'

/** Every temperature that was read, beside the station's limits for this cooler. */
export function Readings(props: {
  readings: readonly ReadingView[]
  limits: CoolerView['limits']
}) {
  const { low, high } = props.limits
  return (
    <Panel title="Temperature">
      <p>
        Must stay between <b className="numbers">{bothScales(low)}</b> and{' '}
        <b className="numbers">{bothScales(high)}</b>.
      </p>
      {props.readings.length > 0 && (
        <Table
          caption="Temperature readings of this cooler"
          columns={[
            { head: 'Read', cell: (reading) => <Time ms={reading.ms} /> },
            { head: 'Temperature', cell: (reading) => <ReadingText reading={reading} /> },
            { head: 'By', cell: (reading) => reading.by },
          ]}
          rows={props.readings}
          rowKey={(reading) => `${reading.ms} ${reading.celsius}`}
        />
      )}
    </Panel>
  )
}
