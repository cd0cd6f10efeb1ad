import { useState } from 'react'
import type { StockView } from '../../shared-types/views/printing.ts'
import { useMay, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { Table } from '../parts/table.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import './labels.css'
import { draftOfStock, emptyDraft, type StockDraft } from './stock-draft.ts'
import { StockForm } from './stock-form.tsx'
import { StockPreview } from './stock-preview.tsx'
import { useStocks } from './use-printing.ts'

type Shown =
  | { readonly is: 'table' }
  | { readonly is: 'form'; readonly start: StockDraft }
  | { readonly is: 'preview'; readonly stock: StockView }

/** The table of label stocks: looked at, described anew, corrected, taken off. */
export function StocksDialog(props: { onClose: () => void }) {
  const [shown, setShown] = useState<Shown>({ is: 'table' })
  const back = () => setShown({ is: 'table' })
  return (
    <Dialog title="Label stocks" onClose={props.onClose} isWide>
      {shown.is === 'table' && <StockTable onShow={setShown} />}
      {shown.is === 'form' && <StockForm start={shown.start} onDone={back} />}
      {shown.is === 'preview' && (
        <>
          <h3>{shown.stock.words}</h3>
          <StockPreview stock={shown.stock.stock} />
          <div className="row">
            <Button onPress={back} autoFocus>
              Back to the table
            </Button>
          </div>
        </>
      )}
    </Dialog>
  )
}

function StockTable({ onShow }: { readonly onShow: (shown: Shown) => void }) {
  const stocks = useStocks()
  const may = useMay('stock.describe')
  return (
    <>
      <Table
        caption="Label stocks, the smallest label first"
        rows={stocks}
        rowKey={({ name }) => name}
        columns={[
          { head: 'Stock', cell: ({ words }) => words },
          { head: 'Labels a kit', isNumber: true, cell: KitLabels },
          { head: 'Cold', cell: ({ stock }) => coldWords(stock.coldC) },
          {
            head: 'More',
            cell: (stock) => <Deeds stock={stock} isFree={may} onShow={onShow} />,
          },
        ]}
      />
      <div className="row">
        <Button
          kind="main"
          keyHint="Alt+D"
          autoFocus
          isDisabled={!may}
          why="the crew describes stocks"
          onPress={() => onShow({ is: 'form', start: emptyDraft })}
        >
          Describe another stock
        </Button>
      </div>
    </>
  )
}

function KitLabels({ kitLabels, tooSmall }: StockView) {
  return kitLabels ?? <span title={tooSmall ?? ''}>too small</span>
}

function coldWords(coldC: number | null): string {
  return coldC === null ? 'not stated' : `holds to ${String(coldC).replace('-', '−')} °C`
}

function Deeds(props: { stock: StockView; isFree: boolean; onShow: (shown: Shown) => void }) {
  const { stock, isFree, onShow } = props
  const { tell, busy } = useTell('stock.retire')
  async function retire() {
    const answer = await tell({ name: stock.name })
    if (answer.ok) sayDone(`Taken off the table: ${stock.words}.`)
    else sayRefused(answer.refusal)
  }
  return (
    <div className="row">
      <Button label={`See ${stock.words}`} onPress={() => onShow({ is: 'preview', stock })}>
        See
      </Button>
      <Button
        label={`Correct ${stock.words}`}
        isDisabled={!isFree}
        onPress={() => onShow({ is: 'form', start: draftOfStock(stock.stock) })}
      >
        Correct
      </Button>
      <Button
        label={`Take off ${stock.words}`}
        isDisabled={!isFree || busy}
        onPress={() => void retire()}
      >
        Take off
      </Button>
    </div>
  )
}
