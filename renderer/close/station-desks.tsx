import type { DeskCloseView } from '../../shared-types/views/station-close.ts'
import { Badge } from '../parts/badge.tsx'
import { Panel } from '../parts/panel.tsx'
import { Table } from '../parts/table.tsx'
import { Time } from '../parts/time.tsx'

function State({ desk: { state } }: { desk: DeskCloseView }) {
  if (state === 'closed') return <Badge shape="fine">closed</Badge>
  if (state === 'open') return <Badge shape="now">not closed</Badge>
  return <Badge shape="idle">did not work</Badge>
}

/** Each desk's own close: who signed it, when, and what was amended after. */
export function StationDesks({ desks }: { desks: readonly DeskCloseView[] }) {
  return (
    <Panel title="Its desks">
      <div className="station-desks" tabIndex={-1}>
        <Table
          caption="Desks of the station"
          rows={desks}
          rowKey={({ desk }) => desk}
          columns={[
            { head: 'Desk', cell: ({ desk }) => <span className="numbers">{desk}</span> },
            { head: 'State', cell: (desk) => <State desk={desk} /> },
            { head: 'Closed by', cell: ({ lead }) => lead ?? '' },
            {
              head: 'Second person',
              cell: ({ lead, second, aloneBecause }) =>
                lead === null ? '' : (second ?? `alone: ${aloneBecause}`),
            },
            {
              head: 'When',
              cell: ({ closedMs }) => (closedMs === null ? '' : <Time ms={closedMs} />),
            },
          ]}
        />
      </div>
      {desks.some(({ amended }) => amended.length > 0) && (
        <ul className="station-amended" aria-label="Amended after a desk’s close">
          {desks.flatMap(({ desk, amended }) =>
            amended.map((say) => (
              <li key={`${desk} ${say}`}>
                <Badge shape="soon">amended</Badge> <span className="numbers">{desk}</span> {say}
              </li>
            )),
          )}
        </ul>
      )}
      <p className="station-missing">
        A desk that is missing here has not been merged: merge its log before anybody signs.
      </p>
    </Panel>
  )
}
