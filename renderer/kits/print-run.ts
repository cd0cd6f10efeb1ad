/** Reserving many kits: one call of the desk after another, so that it can be watched and stopped. */
import { useRef, useState } from 'react'
import type { StockName } from '../../shared-types/label.ts'
import type { KitNumber } from '../../shared-types/sample-number.ts'
import type { PdfFile } from '../../shared-types/views/common.ts'
import { useTell } from '../desk/use-desk.ts'
import { sayDone, sayRefused } from '../scanner/strip.ts'

/** Kits of one call once there are more than one call can be watched for. */
const batch = 25

/** Desk letter and serial, `A0001`: enough to tell the kits of one desk apart. */
function deskSerial(kit: KitNumber): string {
  return kit.slice(5, 10)
}

export interface PrintedBatch {
  readonly words: string
  readonly count: number
  readonly pdf: PdfFile
}

export interface PrintRun {
  readonly wanted: number
  readonly batches: readonly PrintedBatch[]
  readonly isRunning: boolean
  readonly start: (count: number, stock: StockName) => Promise<PrintedBatch[]>
  readonly stop: () => void
}

/** Prints so many kits in batches; what is printed when it stops or is refused stays printed. */
export function usePrintRun(): PrintRun {
  const { tell } = useTell('labels.printKits')
  const [wanted, setWanted] = useState(0)
  const [batches, setBatches] = useState<PrintedBatch[]>([])
  const [isRunning, setRunning] = useState(false)
  const isStopped = useRef(false)

  async function next(count: number, stock: StockName): Promise<PrintedBatch | null> {
    const answer = await tell({ for: { whom: 'reserve', count }, stock })
    if (!answer.ok) {
      sayRefused(answer.refusal)
      return null
    }
    const { kits, pdf } = answer.value
    const [first, last] = [kits[0], kits.at(-1)]
    const words = first && last ? `${deskSerial(first)} to ${deskSerial(last)}` : ''
    return { words, count: kits.length, pdf }
  }

  async function start(count: number, stock: StockName): Promise<PrintedBatch[]> {
    isStopped.current = false
    setWanted(count)
    setRunning(true)
    const done: PrintedBatch[] = []
    for (let left = count; left > 0 && !isStopped.current; left -= batch) {
      const printed = await next(Math.min(batch, left), stock)
      if (!printed) break
      done.push(printed)
      setBatches([...done])
    }
    setRunning(false)
    const total = done.reduce((sum, each) => sum + each.count, 0)
    if (total > 0) sayDone(`Kits numbered, labels made: ${total}.`)
    return done
  }

  return {
    wanted,
    batches,
    isRunning,
    start,
    stop: () => {
      isStopped.current = true
    },
  }
}
