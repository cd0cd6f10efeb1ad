import { useEffect, useRef, useState } from 'react'
import { groupedAsTyped, readSampleNumber } from '../../shared-types/sample-number.ts'
import { deliverScan } from '../scanner/scans.ts'
import { sayRefused, useStripWord } from '../scanner/strip.ts'
import { TextEntry } from './text-entry.tsx'

/**
 * A place to type a sample number by hand when the label cannot be scanned. Its check character is looked
 * at first; then Enter hands it to `onNumber`, or to whoever takes scans now. What was refused stays, in
 * the groups of the label, to be compared with it. A scan needs no field at all.
 */
export function NumberEntry(props: {
  label: string
  onNumber?: (text: string) => void
  hint?: string
  error?: string
  autoFocus?: boolean
}) {
  const { onNumber = deliverScan, error, ...rest } = props
  const [text, setText] = useState('')
  const [slip, setSlip] = useState<string>()
  const handedOver = useHandedOver((refused) => {
    if (text === '') setText(refused)
  })
  function submit() {
    if (text.trim() === '') return
    const read = readSampleNumber(text)
    if (!read.ok) {
      setText(groupedAsTyped(text))
      setSlip(`${read.refusal.say} ${read.refusal.next}`)
      return sayRefused(read.refusal)
    }
    setSlip(undefined)
    setText('')
    handedOver(groupedAsTyped(text))
    onNumber(text)
  }
  return (
    <TextEntry
      {...rest}
      numbers
      maxLength={80}
      value={text}
      error={slip ?? error}
      onChange={(typed) => {
        setText(typed)
        setSlip(undefined)
      }}
      onEnter={submit}
    />
  )
}

/** Hears of a number that was handed over and then refused. The next word said is about it. */
function useHandedOver(onRefused: (number: string) => void): (number: string) => void {
  const word = useStripWord()
  const waiting = useRef<{ number: string; after: number | undefined }>(undefined)
  const latest = useRef(onRefused)
  useEffect(() => {
    latest.current = onRefused
  })
  useEffect(() => {
    const sent = waiting.current
    if (sent === undefined || word === undefined || word.id === sent.after) return
    waiting.current = undefined
    if (word.kind === 'refused' || word.kind === 'wrong-label') latest.current(sent.number)
  }, [word])
  return (number) => {
    waiting.current = { number, after: word?.id }
  }
}
