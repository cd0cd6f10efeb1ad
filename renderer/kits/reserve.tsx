import { type FormEvent, useState } from 'react'
import { StockName } from '../../shared-types/label.ts'
import type { KitsView } from '../../shared-types/views/kits.ts'
import { useMay } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { Panel } from '../parts/panel.tsx'
import { openPdf } from '../parts/pdf.ts'
import { TextEntry } from '../parts/text-entry.tsx'
import { setLabelStock, stockWords, useLabelStock } from './label-stock.ts'
import { type PrintRun, usePrintRun } from './print-run.ts'

const stockOptions = StockName.options.map((value, place) => ({
  value,
  label: stockWords[value],
  key: String(place + 1),
}))

/** The labels on the shelf, the stock in the printer, and kits numbered before anybody comes. */
export function Reserve({ labels }: { readonly labels: KitsView['labels'] }) {
  const stock = useLabelStock()
  const run = usePrintRun()
  return (
    <Panel title="Labels">
      <dl className="label-counts">
        <Count words="blank" count={labels.blanks} />
        <Count words="printed, not used" count={labels.printed} />
        <Count words="used" count={labels.used} />
        <Count words="void" count={labels.void} />
      </dl>
      <Choice
        label="Printer is loaded with"
        options={stockOptions}
        value={stock}
        onChange={setLabelStock}
      />
      <ReserveForm run={run} />
      {run.batches.length + Number(run.isRunning) > 0 && <Progress run={run} />}
    </Panel>
  )
}

function Count(props: { words: string; count: number }) {
  return (
    <div>
      <dt>{props.words}</dt>
      <dd className="numbers">{props.count}</dd>
    </div>
  )
}

/** The most kits asked for in one go: more than any station opens with. */
const most = 3000

function ReserveForm({ run }: { readonly run: PrintRun }) {
  const [count, setCount] = useState('')
  const [error, setError] = useState<string>()
  const stock = useLabelStock()
  const may = useMay('labels.printKits')
  async function print() {
    const wanted = Number(count)
    const isGood = /^\d+$/.test(count.trim()) && wanted >= 1 && wanted <= most
    setError(isGood ? undefined : `A number from 1 to ${most}.`)
    if (!isGood) return
    const [first] = await run.start(wanted, stock)
    if (first) openPdf(first.pdf)
    setCount('')
  }
  function submit(event: FormEvent) {
    event.preventDefault()
    if (may && !run.isRunning) void print()
  }
  return (
    <form className="reserve-form" onSubmit={submit}>
      <TextEntry
        label="Number kits for whoever comes"
        hint="before dawn, so that no hunter waits for the printer"
        value={count}
        onChange={setCount}
        inputMode="numeric"
        maxLength={4}
        numbers
        error={error}
      />
      <Button
        type="submit"
        kind="main"
        isDisabled={!may || run.isRunning}
        why={may ? 'printing' : 'the crew prints labels'}
      >
        Number and print
      </Button>
    </form>
  )
}

/** How far it is; each batch is a PDF of its own. */
function Progress({ run }: { readonly run: PrintRun }) {
  const done = run.batches.reduce((sum, each) => sum + each.count, 0)
  return (
    <div className="print-progress">
      <p role="status">
        {done} of {run.wanted} kits numbered{run.isRunning ? '…' : '.'}
      </p>
      {run.isRunning && (
        <div className="row">
          <progress value={done} max={run.wanted} aria-label="Kits numbered" />
          <Button onPress={run.stop}>Stop after this batch</Button>
        </div>
      )}
      <ul className="row">
        {run.batches.map((batch) => (
          <li key={batch.words}>
            <Button onPress={() => openPdf(batch.pdf)}>
              Open <span className="numbers">{batch.words}</span>
            </Button>
          </li>
        ))}
      </ul>
    </div>
  )
}
