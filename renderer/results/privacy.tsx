import { useState } from 'react'
import type { RetentionView } from '../../shared-types/views/results.ts'
import { nothing, useAsk, useMay } from '../desk/use-desk.ts'
import { useFetch } from '../desk/use-fetch.ts'
import { Button } from '../parts/button.tsx'
import { Empty } from '../parts/empty.tsx'
import { Notice } from '../parts/notice.tsx'
import { Panel } from '../parts/panel.tsx'
import { openPdf } from '../parts/pdf.ts'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { Table } from '../parts/table.tsx'
import { Time } from '../parts/time.tsx'
import { PurgeDialog } from '../safekeeping/purge-dialog.tsx'

/** How long contacts are kept, who still waits, erasing them, and the certificates. */
export function Privacy() {
  const { data, refusal } = useAsk('retention', nothing)
  if (data === undefined) return <RefusalNote refusal={refusal} />
  return (
    <>
      <Kept data={data} />
      <Erased purges={data.purges} />
    </>
  )
}

function Kept({ data }: { data: RetentionView }) {
  const [isErasing, setErasing] = useState(false)
  const may = useMay('contacts.purge')
  const until = data.contactsUntil
  return (
    <Panel
      title="Contacts kept"
      actions={
        <Button
          kind="danger"
          keyHint="Alt+E"
          isDisabled={!may || data.days.length === 0}
          why={may ? 'no contact is kept' : 'a station lead does this'}
          onPress={() => setErasing(true)}
        >
          Erase contacts…
        </Button>
      }
    >
      <div className="stack">
        <Notice kind={data.due ? 'warn' : 'info'}>
          {until === null
            ? 'No day is set until which contacts are kept: set one under Rules.'
            : data.due
              ? `Contacts were to be kept until ${until}: erase them once every hunter is told.`
              : `Contacts are kept until ${until}.`}
        </Notice>
        {data.days.length === 0 ? (
          <Empty say="No contact is kept." next="Nothing is to be erased." />
        ) : (
          <Table
            caption="Contacts by the day of check-in"
            columns={[
              { head: 'Day', cell: ({ day }) => day },
              { head: 'Contacts', cell: ({ contacts }) => contacts, isNumber: true },
              { head: 'Still to be told', cell: ({ untold }) => untold, isNumber: true },
              { head: 'Awaiting a result', cell: ({ awaiting }) => awaiting, isNumber: true },
            ]}
            rows={data.days}
            rowKey={({ day }) => day}
          />
        )}
      </div>
      {isErasing && <PurgeDialog onClose={() => setErasing(false)} />}
    </Panel>
  )
}

function Erased({ purges }: { purges: RetentionView['purges'] }) {
  const paper = useFetch('retention.certificate')
  if (purges.length === 0) return null
  return (
    <Panel title="Erased before" count={purges.length}>
      <RefusalNote refusal={paper.refusal} />
      <Table
        caption="Every time contacts were erased"
        columns={[
          { head: 'When', cell: ({ ms }) => <Time ms={ms} /> },
          { head: 'Up to', cell: ({ upTo }) => upTo },
          { head: 'Contacts', cell: ({ contacts }) => contacts, isNumber: true },
          { head: 'By', cell: ({ by }) => by },
          {
            head: 'Certificate',
            cell: ({ entry, upTo }) => (
              <Button
                isDisabled={paper.busy}
                label={`Certificate of what was erased up to ${upTo}`}
                onPress={() => void paper.fetch({ entry }, openPdf)}
              >
                Certificate
              </Button>
            ),
          },
        ]}
        rows={purges}
        rowKey={({ entry }) => entry}
      />
    </Panel>
  )
}
