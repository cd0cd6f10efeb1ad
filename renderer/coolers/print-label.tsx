import { useState } from 'react'
import type { CoolerView } from '../../shared-types/views/coolers.ts'
import { useMay, useTell } from '../desk/use-desk.ts'
import { ReprintDialog } from '../kits/reprint-dialog.tsx'
import { takeLabels } from '../labels/hand-over.ts'
import { useLabelStock } from '../labels/use-printing.ts'
import { Button } from '../parts/button.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'

/** Prints the cooler's own label; once it has one, another is a reprint. */
export function PrintLabel(props: { cooler: CoolerView }) {
  const { cooler } = props
  const may = useMay('labels.printCooler')
  const stock = useLabelStock('coolers')
  const [isAgain, setAgain] = useState(false)
  const { tell, busy } = useTell('labels.printCooler')

  async function print() {
    const answer = await tell({ cooler: cooler.cooler, stock })
    if (answer.ok) return sayDone(`Label of ${cooler.name}. ${takeLabels(answer.value)}`)
    if (answer.refusal.code === 'first-copy-still-good') return setAgain(true)
    sayRefused(answer.refusal)
  }
  return (
    <>
      <Button
        keyHint="Alt+P"
        label="Label of this cooler, to print"
        onPress={() => void print()}
        isDisabled={!may || busy}
        why={may ? 'printing' : 'the crew prints labels'}
      >
        Label
      </Button>
      {isAgain && <ReprintDialog number={cooler.cooler} onClose={() => setAgain(false)} />}
    </>
  )
}
