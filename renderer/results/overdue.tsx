import { nothing, useAsk } from '../desk/use-desk.ts'
import { useFetch } from '../desk/use-fetch.ts'
import { Badge } from '../parts/badge.tsx'
import { Button } from '../parts/button.tsx'
import { Empty } from '../parts/empty.tsx'
import { NumberText } from '../parts/number-text.tsx'
import { Panel } from '../parts/panel.tsx'
import { saveText } from '../parts/pdf.ts'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { Table } from '../parts/table.tsx'
import { Time } from '../parts/time.tsx'
import { sayDone } from '../scanner/strip.ts'

/** Bags given to a courier and never reported, the oldest first. */
export function Overdue() {
  const { data, refusal } = useAsk('results.overdue', nothing)
  const list = useFetch('results.overdueList')
  if (data === undefined) return <RefusalNote refusal={refusal} />
  const late = data.bags.filter(({ overdue }) => overdue).length
  return (
    <Panel
      title="Without a result"
      note={`${data.all} bags, ${late} overdue after ${data.days} days`}
      actions={
        <Button
          keyHint="Alt+Y"
          isDisabled={list.busy}
          onPress={() =>
            void list.fetch(nothing, (file) => {
              saveText(file)
              sayDone(`${file.name} is saved. No person is in it.`)
            })
          }
        >
          Save as CSV
        </Button>
      }
    >
      <RefusalNote refusal={list.refusal} />
      {data.all === 0 ? (
        <Empty say="Every bag that left has a result." next="Nothing is to be asked after." />
      ) : (
        <Table
          caption="Bags without a result, the oldest first"
          columns={[
            { head: 'Bag', cell: ({ bag }) => <NumberText number={bag} /> },
            {
              head: 'State',
              cell: ({ overdue, pending }) => (
                <Badge shape={overdue ? 'now' : pending ? 'busy' : 'idle'}>
                  {overdue ? 'overdue' : pending ? 'being tested' : 'waiting'}
                </Badge>
              ),
            },
            { head: 'Days out', cell: ({ daysOut }) => daysOut, isNumber: true },
            { head: 'Handed off', cell: ({ handedOffMs }) => <Time ms={handedOffMs} /> },
            {
              head: 'Manifest',
              cell: ({ handoff }) => (handoff ? <NumberText number={handoff} /> : 'none'),
            },
            { head: 'To', cell: ({ destination }) => destination },
          ]}
          rows={data.bags}
          rowKey={({ bag }) => bag}
        />
      )}
    </Panel>
  )
}
