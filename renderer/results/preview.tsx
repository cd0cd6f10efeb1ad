import {
  doubtWords,
  type ResultReading,
  resultWords,
} from '../../shared-types/laboratory-result.ts'
import type { ResultPreview } from '../../shared-types/views/results.ts'
import { nothing, useAsk, useMay, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Notice } from '../parts/notice.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { Table } from '../parts/table.tsx'
import { sayDone } from '../scanner/strip.ts'
import type { BroughtMark } from './use-bring.ts'

/** What the file brings by this reading, and reading it in. */
export function Preview(props: {
  mark: BroughtMark
  laboratory: string
  reading: ResultReading
  onDone: (doubts: number) => void
}) {
  const { mark, laboratory, reading, onDone } = props
  const input = { brought: mark.brought, laboratory, reading }
  const preview = useAsk('results.preview', input)
  const { tell, busy, refusal } = useTell('results.import')
  const may = useMay('results.import')
  const seen = preview.refusal ? undefined : preview.data
  async function read() {
    const done = await tell(input)
    if (!done.ok) return
    const { taken, known, doubts } = done.value
    sayDone(`${mark.name}: ${taken} results read in, ${known} known before, ${doubts} in doubt.`)
    onDone(doubts)
  }
  if (busy) return <Progress />
  return (
    <div className="stack">
      <RefusalNote refusal={preview.refusal ?? refusal} />
      {seen && <Brings seen={seen} />}
      {seen && (
        <div>
          <Button
            kind="main"
            keyHint="Alt+K"
            isDisabled={!may}
            why="a lead or the office does this"
            onPress={() => void read()}
          >
            Read the file in
          </Button>
        </div>
      )}
    </div>
  )
}

function Brings(props: { seen: ResultPreview }) {
  const { rows, good, known, skipped, doubts } = props.seen
  const inDoubt = doubts.reduce((all, each) => all + each.rows, 0)
  const lines = [
    ...good.map(({ word, rows: of }) => ({ what: resultWords[word], rows: of })),
    { what: 'known already', rows: known },
    { what: 'passed over', rows: skipped },
    ...doubts.map(({ doubt, rows: of }) => ({ what: `In doubt: ${doubtWords[doubt]}`, rows: of })),
  ]
  return (
    <>
      <Notice kind={inDoubt > 0 ? 'warn' : 'good'}>
        {rows} rows. {inDoubt === 0 ? 'None is in doubt.' : `In doubt: ${inDoubt}.`} A changed
        result does not take the place of the one before: both stay on record.
      </Notice>
      <Table
        caption="What the file brings"
        columns={[
          { head: 'Rows that say', cell: ({ what }) => what },
          { head: 'Rows', cell: ({ rows: of }) => of, isNumber: true },
        ]}
        rows={lines.filter(({ rows: of }) => of > 0)}
        rowKey={({ what }) => what}
      />
    </>
  )
}

/** How far the reading in is; every other window goes on meanwhile. */
function Progress() {
  const { data } = useAsk('results.progress', nothing, { everyMs: 300 })
  const { done = 0, total = 1 } = data?.importing ?? {}
  return (
    <div className="stack" role="status">
      <p>Reading in…</p>
      <progress
        className="results-bar"
        aria-label="Results read in so far"
        max={Math.max(1, total)}
        value={done}
      />
      <p className="numbers" aria-hidden="true">
        {done} of {total}
      </p>
    </div>
  )
}
