import { siteWords } from '../../shared-types/tissue.ts'
import type { TrainingView } from '../../shared-types/views/results.ts'
import { nothing, useAsk } from '../desk/use-desk.ts'
import { Empty } from '../parts/empty.tsx'
import { Panel } from '../parts/panel.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { Table } from '../parts/table.tsx'

const percent = (share: number) => `${(share * 100).toFixed(1)} %`
const interval = ({ low, high }: { low: number; high: number }) =>
  `${percent(low)} to ${percent(high)}`

/** Unsuitable tissue by sampler and side, for leads: training follows evidence. */
export function Training() {
  const { data, refusal } = useAsk('results.training', nothing)
  if (data === undefined) return <RefusalNote refusal={refusal} />
  return <TrainingTable data={data} />
}

function TrainingTable({ data }: { data: TrainingView }) {
  const { rows, overall, say } = data
  return (
    <Panel title="Unsuitable tissue by sampler" note="shown to leads only">
      {rows.length === 0 ? (
        <Empty say="No sample was reported yet." next="Read results in first." />
      ) : (
        <div className="stack">
          <p>
            All samplers: {overall.unsuitable} of {overall.tested} unsuitable,{' '}
            {percent(overall.share)} ({interval(overall)}).
          </p>
          <Table
            caption="Unsuitable share by sampler and side"
            columns={[
              { head: 'Sampler', cell: ({ name }) => name },
              { head: 'Side', cell: ({ site }) => siteWords[site] },
              { head: 'Tested', cell: ({ tested }) => tested, isNumber: true },
              { head: 'Unsuitable', cell: ({ unsuitable }) => unsuitable, isNumber: true },
              { head: 'Share', cell: ({ share }) => percent(share), isNumber: true },
              { head: '95% interval', cell: interval, isNumber: true },
            ]}
            rows={rows}
            rowKey={({ sampler, site }) => `${sampler} ${site}`}
          />
          <p>{say}</p>
        </div>
      )}
    </Panel>
  )
}
