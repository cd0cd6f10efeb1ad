import { type FormEvent, useState } from 'react'
import type { KitsView } from '../../shared-types/views/kits.ts'
import { useMay, useTell } from '../desk/use-desk.ts'
import { takeLabels } from '../labels/hand-over.ts'
import { JamDialog } from '../labels/jam-dialog.tsx'
import { PrintJob } from '../labels/print-job.tsx'
import { PrintSetUp } from '../labels/print-set-up.tsx'
import { StocksDialog } from '../labels/stocks-dialog.tsx'
import { usePrinting, useStocks } from '../labels/use-printing.ts'
import { Button } from '../parts/button.tsx'
import { ManyChoice } from '../parts/choice.tsx'
import { Panel } from '../parts/panel.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'

type Open = 'set-up' | 'stocks' | 'jam'

/** The labels on the shelf, the stock in the printer, and kits numbered before anybody comes. */
export function Reserve({ labels }: { readonly labels: KitsView['labels'] }) {
  const printing = usePrinting()
  const [open, setOpen] = useState<Open>()
  const close = () => setOpen(undefined)
  return (
    <Panel
      title="Labels"
      actions={
        <Button keyHint="J" onPress={() => setOpen('jam')}>
          Jam: go on
        </Button>
      }
    >
      <Counts labels={labels} />
      <Loaded onSetUp={() => setOpen('set-up')} onStocks={() => setOpen('stocks')} />
      <ReserveForm stock={printing.chosen.kits.stock} />
      <PrintJob printing={printing} onJam={() => setOpen('jam')} />
      {open === 'set-up' && <PrintSetUp onClose={close} />}
      {open === 'stocks' && <StocksDialog onClose={close} />}
      {open === 'jam' && <JamDialog onClose={close} />}
    </Panel>
  )
}

function Counts({ labels }: { readonly labels: KitsView['labels'] }) {
  return (
    <dl className="label-counts">
      <Count words="blank" count={labels.blanks} />
      <Count words="printed, not used" count={labels.printed} />
      <Count words="used" count={labels.used} />
      <Count words="void" count={labels.void} />
    </dl>
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

/** What kit labels come out on, and how many of them a kit takes: a roll is soon at its end. */
function Loaded(props: { onSetUp: () => void; onStocks: () => void }) {
  const { printer, stock } = usePrinting().chosen.kits
  const loaded = useStocks().find(({ name }) => name === stock)
  return (
    <div className="loaded">
      <p>
        Kit labels: <b>{loaded?.words ?? stock}</b>, by {printer ?? 'PDF'}.{' '}
        {loaded && (loaded.tooSmall ?? `A kit takes ${loaded.kitLabels} of them.`)}
      </p>
      <div className="row">
        <Button keyHint="P" onPress={props.onSetUp}>
          Stock and printer
        </Button>
        <Button keyHint="T" onPress={props.onStocks}>
          Table of stocks
        </Button>
      </div>
    </div>
  )
}

/** The most kits of one go: their labels are one PDF. */
const most = 300

const ways = [
  {
    value: 'by-hand',
    label: 'to be written by hand',
    hint: 'species and date are lines to write on',
  },
] as const

function ReserveForm({ stock }: { readonly stock: string }) {
  const [count, setCount] = useState('')
  const [byHand, setByHand] = useState<'by-hand'[]>([])
  const [error, setError] = useState<string>()
  const may = useMay('labels.printKits')
  const { tell, busy } = useTell('labels.printKits')
  async function print() {
    const wanted = Number(count)
    const isGood = /^\d+$/.test(count.trim()) && wanted >= 1 && wanted <= most
    setError(isGood ? undefined : `A number from 1 to ${most}.`)
    if (!isGood) return
    const reserve = { whom: 'reserve', count: wanted, byHand: byHand.length > 0 } as const
    const answer = await tell({ for: reserve, stock })
    if (!answer.ok) return sayRefused(answer.refusal)
    sayDone(`${answer.value.kits.length} kits numbered. ${takeLabels(answer.value)}`)
    setCount('')
  }
  function submit(event: FormEvent) {
    event.preventDefault()
    if (may && !busy) void print()
  }
  return (
    <form className="reserve-form" onSubmit={submit}>
      <TextEntry
        label="Number kits for whoever comes"
        hint={`before dawn, so that no hunter waits for the printer; up to ${most} at once`}
        value={count}
        onChange={setCount}
        inputMode="numeric"
        maxLength={3}
        numbers
        error={error}
      />
      <Button
        type="submit"
        kind="main"
        isDisabled={!may || busy}
        why={may ? 'being made' : 'the crew prints labels'}
      >
        Number and print
      </Button>
      <ManyChoice label="Their labels" options={ways} value={byHand} onChange={setByHand} />
    </form>
  )
}
