/** Where a scan goes: to the screen or dialog that asked last, else to the window's own reader. */
import { useEffect, useRef } from 'react'

/** `not-mine` passes the scan on to the window's own reader, which says what it is. */
export type ScanHandler = (text: string) => 'not-mine' | void

const asking: { current: ScanHandler }[] = []
const fallback: { current: ScanHandler }[] = []

/** Hands a scanned or typed number to whoever takes scans now. */
export function deliverScan(text: string): void {
  const taken = asking.at(-1)?.current(text)
  const passedOn = asking.length === 0 || taken === 'not-mine'
  if (passedOn) fallback.at(-1)?.current(text)
}

function useHandler(handlers: { current: ScanHandler }[], handler: ScanHandler): void {
  const latest = useRef(handler)
  useEffect(() => {
    latest.current = handler
  })
  useEffect(() => {
    handlers.push(latest)
    return () => {
      handlers.splice(handlers.indexOf(latest), 1)
    }
  }, [handlers])
}

/** Takes the scans while this component is mounted; the one mounted last has them. */
export function useScan(handler: ScanHandler): void {
  useHandler(asking, handler)
}

/** Takes the scans that no screen wants. */
export function useScanFallback(handler: ScanHandler): void {
  useHandler(fallback, handler)
}
