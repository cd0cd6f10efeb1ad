import { useState } from 'react'
import {
  type SampleNumber,
  kitOf,
  numberParts,
  readSampleNumber,
} from '../../shared-types/sample-number.ts'
import type { KitsView, NumberedKit } from '../../shared-types/views/kits.ts'
import { usePlace } from '../desk/place.ts'
import { nothing, useAsk } from '../desk/use-desk.ts'
import { Empty } from '../parts/empty.tsx'
import { NumberEntry } from '../parts/number-entry.tsx'
import { Panel } from '../parts/panel.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { useScan } from '../scanner/scans.ts'
import { KitDialog } from './kit-dialog.tsx'
import { KitTable } from './kit-table.tsx'
import './kits.css'
import { Ledger } from './ledger.tsx'
import { Reserve } from './reserve.tsx'

/** Kits and labels: where each is, and what may be done about it. */
export function KitsScreen() {
  const { data, refusal } = useAsk('kits', nothing)
  return (
    <div className="kits">
      <h1 className="unseen">Kits</h1>
      <RefusalNote refusal={refusal} />
      {data && <Kits kits={data} />}
    </div>
  )
}

/** The labels of a kit carry one of these parts. */
const kitParts = ['L', 'R', 'X', 'K', 'H']

function kitLabelOf(text: string): SampleNumber | null {
  const read = readSampleNumber(text)
  return read.ok && kitParts.includes(numberParts(read.value).part) ? read.value : null
}

function Kits({ kits }: { readonly kits: KitsView }) {
  const place = usePlace().number
  const [number, setNumber] = useState<SampleNumber | null>(place ? kitLabelOf(place) : null)
  const all = [...kits.reserved, ...kits.latest]
  useScan((text) => {
    const label = kitLabelOf(text)
    if (!label) return 'not-mine'
    setNumber(label)
  })
  return (
    <>
      <div className="kits-top">
        <Ledger balances={kits.balances} />
        <Reserve labels={kits.labels} />
      </div>
      <Numbered kits={kits} onOpen={({ kit }) => setNumber(kit)} />
      {number && (
        <KitDialog
          key={number}
          number={number}
          kit={all.find(({ kit }) => kit === kitOf(number))}
          onClose={() => setNumber(null)}
        />
      )}
    </>
  )
}

function Numbered(props: { kits: KitsView; onOpen: (kit: NumberedKit) => void }) {
  const { reserved, latest } = props.kits
  return (
    <Panel
      title={`Numbered kits: ${reserved.length} reserved, not opened`}
      actions={
        <div className="kit-find">
          <NumberEntry label="Scan any label of a kit, or type it" />
        </div>
      }
    >
      {reserved.length + latest.length === 0 && (
        <Empty
          say="No kit has a number yet."
          next="A kit gets its number when its labels are printed: at check-in, or before dawn above."
        />
      )}
      {reserved.length > 0 && (
        <KitTable caption="Reserved kits" kits={reserved} onOpen={props.onOpen} />
      )}
      {latest.length > 0 && (
        <>
          <h3>Opened or spoiled, latest first</h3>
          <KitTable caption="Opened or spoiled kits" kits={latest} onOpen={props.onOpen} />
        </>
      )}
    </Panel>
  )
}
