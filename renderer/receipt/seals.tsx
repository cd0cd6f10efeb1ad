import { useState } from 'react'
import { SealNumber } from '../../shared-types/cooler.ts'
import type { CoolerNumber } from '../../shared-types/sample-number.ts'
import type { ManifestCheckView } from '../../shared-types/views/custody.ts'
import { Badge } from '../parts/badge.tsx'
import { Panel } from '../parts/panel.tsx'
import { TextEntry } from '../parts/text-entry.tsx'

/** The seals as typed, by cooler; one that was not read is not in it. */
export type SealsRead = ReadonlyMap<CoolerNumber, string>

/**
 * Each cooler's seal as it arrives, read before the lid is opened. What the list says is shown only once a
 * number is there, so that it is read and not repeated.
 */
export function Seals(props: {
  coolers: ManifestCheckView['coolers']
  seals: SealsRead
  onRead: (cooler: CoolerNumber, seal: string) => void
}) {
  return (
    <Panel title="2. Read each seal" note={`${props.seals.size} of ${props.coolers.length}`}>
      {props.coolers.map((each) => (
        <Seal key={each.cooler} {...each} onRead={(seal) => props.onRead(each.cooler, seal)} />
      ))}
    </Panel>
  )
}

function Seal(props: ManifestCheckView['coolers'][number] & { onRead: (seal: string) => void }) {
  const [text, setText] = useState('')
  const read = SealNumber.safeParse(text)
  return (
    <div className="receipt-seal">
      <TextEntry
        label={`Seal on ${props.name}`}
        value={text}
        onChange={(typed) => {
          setText(typed)
          props.onRead(SealNumber.safeParse(typed).data ?? '')
        }}
        takesScan
        numbers
        maxLength={20}
      />
      {!read.success && <Badge shape="idle">not read</Badge>}
      {read.success && read.data === props.seal && <Badge shape="fine">as on the list</Badge>}
      {read.success && read.data !== props.seal && (
        <Badge shape="now">the list says {props.seal}: do not open it, call the station</Badge>
      )}
    </div>
  )
}
