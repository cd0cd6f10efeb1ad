import { useState } from 'react'
import { grouped, readNumberFor } from '../../shared-types/sample-number.ts'
import type { CustodyBy, CustodyView } from '../../shared-types/views/custody.ts'
import { useAsk } from '../desk/use-desk.ts'
import { Badge } from '../parts/badge.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { Notice } from '../parts/notice.tsx'
import { NumberEntry } from '../parts/number-entry.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { Table } from '../parts/table.tsx'
import { Time } from '../parts/time.tsx'
import { useScan } from '../scanner/scans.ts'
import { sayRefused } from '../scanner/strip.ts'

const byWords: Record<CustodyBy, string> = {
  possession: 'in possession',
  view: 'in view',
  locked: 'under lock',
  'secure-area': 'in a secure area',
  sealed: 'under seal',
  'handed-over': 'handed over, under seal',
  ended: 'ended',
}

/** Who held a bag from when to when, without a hole or with the hole named. */
export function CustodyDialog(props: { onClose: () => void }) {
  const [bag, setBag] = useState<string>()
  function take(text: string) {
    const read = readNumberFor(['L', 'R', 'X'], text)
    if (read.ok) setBag(read.value)
    else sayRefused(read.refusal)
  }
  useScan(take)
  const { data, refusal } = useAsk('custody', { bag: bag ?? '-' }, { enabled: bag !== undefined })
  return (
    <Dialog title="Custody of a bag" onClose={props.onClose}>
      <div className="stack">
        <NumberEntry label="Scan a bag, or type its number" onNumber={take} autoFocus />
        {bag !== undefined && <RefusalNote refusal={refusal} />}
        {bag !== undefined && data && !refusal && <Chain custody={data} />}
      </div>
    </Dialog>
  )
}

function Chain(props: { custody: CustodyView }) {
  const { bag, steps, holes, corrections } = props.custody
  return (
    <>
      {holes.length === 0 ? (
        <Notice kind="good">The chain of {grouped(bag)} has no hole.</Notice>
      ) : (
        <Notice kind="warn">
          {holes.map((hole) => (
            <p key={hole}>{hole}</p>
          ))}
        </Notice>
      )}
      <Table
        caption={`Chain of custody of ${grouped(bag)}`}
        columns={[
          {
            head: 'From',
            cell: ({ fromMs, struck }) =>
              struck ? (
                <s>
                  <Time ms={fromMs} />
                </s>
              ) : (
                <Time ms={fromMs} />
              ),
          },
          { head: 'To', cell: ({ toMs }) => (toMs === null ? 'now' : <Time ms={toMs} />) },
          {
            head: 'Held by',
            cell: ({ holder, by, seal, struck }) => {
              const words = `${holder}, ${byWords[by]}${seal === null ? '' : ` ${seal}`}`
              return struck ? <s>{words}</s> : <b>{words}</b>
            },
          },
          {
            head: 'How',
            cell: ({ words, struck }) =>
              struck ? (
                <>
                  <s>{words}</s>{' '}
                  <Badge shape="soon">
                    struck through, {struck.initials} <Time ms={struck.ms} />: {struck.reason}
                  </Badge>
                </>
              ) : (
                words
              ),
          },
        ]}
        rows={steps}
        rowKey={({ fromMs, holder, words }) => `${fromMs} ${holder} ${words}`}
      />
      {corrections.map(({ ms, what, was, is, initials, reason }) => (
        <p key={`${ms} ${what}`}>
          Corrected {what}: <s>{was}</s> {is}. {initials} <Time ms={ms} />: {reason}
        </p>
      ))}
    </>
  )
}
