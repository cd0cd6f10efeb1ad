import type { CoolerView } from '../../shared-types/views/coolers.ts'
import { useMay, useTell } from '../desk/use-desk.ts'
import { stockWords, useLabelStock } from '../kits/label-stock.ts'
import { Button } from '../parts/button.tsx'
import { openPdf } from '../parts/pdf.ts'
import { sayDone, sayRefused } from '../scanner/strip.ts'

/** Prints the cooler's own label on the stock of this window. */
export function PrintLabel(props: { cooler: CoolerView }) {
  const { cooler } = props
  const may = useMay('labels.printCooler')
  const stock = useLabelStock()
  const { tell, busy } = useTell('labels.printCooler')

  async function print() {
    const answer = await tell({ cooler: cooler.cooler, stock })
    if (!answer.ok) return sayRefused(answer.refusal)
    openPdf(answer.value.pdf)
    sayDone(`Label of ${cooler.name}, on ${stockWords[stock]}.`)
  }
  return (
    <Button
      keyHint="Alt+P"
      label="Label of this cooler, to print"
      onPress={() => void print()}
      isDisabled={!may || busy}
      why={may ? 'printing' : 'the crew prints labels'}
    >
      Label
    </Button>
  )
}
