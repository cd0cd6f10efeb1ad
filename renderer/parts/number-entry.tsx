import { useState } from 'react'
import { deliverScan } from '../scanner/scans.ts'
import { TextEntry } from './text-entry.tsx'

/**
 * A place to type a sample number by hand when the label cannot be scanned. Enter hands it to
 * `onNumber`, or to whoever takes scans now; a scan needs no field at all.
 */
export function NumberEntry(props: {
  label: string
  onNumber?: (text: string) => void
  hint?: string
  error?: string
  autoFocus?: boolean
}) {
  const { onNumber = deliverScan, ...rest } = props
  const [text, setText] = useState('')
  function submit() {
    if (text.trim() === '') return
    onNumber(text)
    setText('')
  }
  return (
    <TextEntry {...rest} numbers maxLength={80} value={text} onChange={setText} onEnter={submit} />
  )
}
