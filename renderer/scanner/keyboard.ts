/** The one listener to this window's keyboard: scans to the scan's taker, keys to what they press. */
import { readSampleNumber } from '../../shared-types/sample-number.ts'
import { go } from '../desk/place.ts'
import { isTextField, remember } from './field-memory.ts'
import { isSingle, keyName, pressKey } from './keys.ts'
import { deliverScan } from './scans.ts'
import { sayStray } from './stray-key.ts'
import { sayRefused } from './strip.ts'
import { createWedge, longestGapMs } from './wedge.ts'

/** A field such as a tag number may be filled by scanning a document that is not ours. */
function isForField(text: string, focused: Element | null): boolean {
  return focused?.hasAttribute('data-takes-scan') === true && !readSampleNumber(text).ok
}

/** A number has twelve characters, so no scan of one is in more runs. */
const mostRuns = 12

/** Starts listening; the answer stops it. Call once for a window. */
export function listenToKeyboard(): () => void {
  const wedge = createWedge((text) => readSampleNumber(text).ok)
  /** How to undo the latest runs of characters in the field they landed in, the oldest first. */
  let undoRuns: (() => void)[] = []
  let waiting: { key: string; timer: ReturnType<typeof setTimeout> } | undefined

  /** The character that waited was a scanner's after all. */
  function forget(): void {
    clearTimeout(waiting?.timer)
    waiting = undefined
  }

  /** The character that waited was a person's: it acts before whatever came next. */
  function settle(): void {
    const key = waiting?.key
    forget()
    if (key !== undefined && !pressKey(key)) sayStray(key)
  }

  function onScan(event: KeyboardEvent, text: string, runs: number): void {
    if (isForField(text, document.activeElement)) return
    event.preventDefault()
    event.stopImmediatePropagation()
    undoRuns.at(-runs)?.()
    deliverScan(text)
  }

  /** Nothing shows a scan that broke where no field takes characters, and its Enter would press something. */
  function onPieces(event: KeyboardEvent): void {
    event.preventDefault()
    event.stopImmediatePropagation()
    sayRefused({ say: 'That scan came in pieces, so nothing was done.', next: 'Scan it again.' })
  }

  /** A single character waits until it is clear that no scan follows it. */
  function onKey(event: KeyboardEvent): void {
    const key = keyName(event)
    if (!isSingle(key)) {
      if (key !== 'Esc' && pressKey(key)) event.preventDefault()
      return
    }
    if (!isTextField(document.activeElement))
      waiting = { key, timer: setTimeout(settle, longestGapMs + 5) }
  }

  function onKeyDown(event: KeyboardEvent): void {
    if (event.repeat || event.isComposing) return
    const chord = event.ctrlKey || event.metaKey || event.altKey
    const press = wedge.press(chord ? 'chord' : event.key, event.timeStamp)
    const isBroken = press.is === 'pieces' && !isTextField(document.activeElement)
    if (press.is === 'more' || press.is === 'scan' || isBroken) forget()
    else if (event.key !== 'Shift') settle()
    if (press.is === 'scan') return onScan(event, press.text, press.runs)
    if (isBroken) return onPieces(event)
    if (press.is === 'first')
      undoRuns = [...undoRuns.slice(1 - mostRuns), remember(document.activeElement)]
    if (press.is !== 'more') onKey(event)
  }

  /** Heard last, so that an open dialog closes by itself first. With nothing to close it leads to the line. */
  function onEscape(event: KeyboardEvent): void {
    if (event.key !== 'Escape' || event.defaultPrevented) return
    if (!pressKey('Esc')) go('line')
  }

  window.addEventListener('keydown', onKeyDown, { capture: true })
  window.addEventListener('keydown', onEscape)
  return () => {
    forget()
    window.removeEventListener('keydown', onKeyDown, { capture: true })
    window.removeEventListener('keydown', onEscape)
  }
}
