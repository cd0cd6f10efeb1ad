/** The desk's clock as this window sees it. */
import { useEffect, useState } from 'react'
import { nothing, useAsk } from './use-desk.ts'

/** How many milliseconds pass on the desk's clock in one of this computer's. */
let rate = 1

/** A live practice sets its pace. */
export function setClockRate(next: number): void {
  rate = next
}

/**
 * Milliseconds since 1970 on the desk's clock, moving on every so often.
 * A practice day runs on a clock of its own, so the difference to this computer's is added; where that
 * clock runs faster, this one does too.
 */
export function useNow(everyMs = 10_000): number {
  const who = useAsk('who', nothing)
  const [hereMs, setHereMs] = useState(Date.now)
  useEffect(() => {
    const timer = setInterval(() => setHereMs(Date.now()), everyMs / Math.max(1, rate))
    return () => clearInterval(timer)
  }, [everyMs])
  return who.data === undefined ? hereMs : who.data.nowMs + (hereMs - who.receivedMs) * rate
}
