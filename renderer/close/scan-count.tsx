import { useState } from 'react'
import {
  BagNumber,
  type CoolerNumber,
  grouped,
  readSampleNumber,
} from '../../shared-types/sample-number.ts'
import { useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { NumberEntry } from '../parts/number-entry.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { useScan } from '../scanner/scans.ts'
import { sayDone, sayRefused } from '../scanner/strip.ts'

/** What became of the last scan, in words. */
function useBags() {
  const [bags, setBags] = useState<readonly BagNumber[]>([])
  const [say, setSay] = useState('')
  function add(text: string) {
    const read = readSampleNumber(text)
    const bag = read.ok ? BagNumber.safeParse(read.value) : undefined
    if (!read.ok) return setSay(read.refusal.say)
    if (!bag?.success) return setSay('That is not the label of a bag.')
    if (bags.includes(bag.data)) return setSay(`${grouped(bag.data)} was scanned before.`)
    setBags([bag.data, ...bags])
    setSay(`${grouped(bag.data)} counted.`)
  }
  return { bags, say, add }
}

/** Counts a cooler bag by bag. What should be in it is not told: it is a blind count too. */
export function ScanCount(props: {
  cooler: CoolerNumber
  words: string
  onDone: () => void
  onClose: () => void
}) {
  const { cooler, words, onDone, onClose } = props
  const { bags, say, add } = useBags()
  const { tell, busy, refusal } = useTell('count.scan')
  useScan(add)
  async function finish() {
    const answer = await tell({ cooler, bags: [...bags] })
    if (!answer.ok) return sayRefused(answer.refusal)
    sayDone(`${words}: ${bags.length} scanned.`)
    onDone()
  }
  return (
    <Dialog title={words} onClose={onClose}>
      <div className="stack close-scan">
        <p>Take out one bag after another, scan each, and lay it back on the ice.</p>
        <p className="close-scan-count" role="status">
          <b className="numbers">{bags.length}</b> scanned. {say}
        </p>
        <NumberEntry label="Or type a bag’s number" autoFocus onNumber={add} />
        <ol className="close-scan-list" aria-label="Scanned, latest first">
          {bags.slice(0, 6).map((bag) => (
            <li key={bag} className="numbers">
              {grouped(bag)}
            </li>
          ))}
        </ol>
        <RefusalNote refusal={refusal} />
        <div className="row">
          <Button kind="main" keyHint="F12" isDisabled={busy} onPress={() => void finish()}>
            That is every bag
          </Button>
        </div>
      </div>
    </Dialog>
  )
}
