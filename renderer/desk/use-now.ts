/** The desk's clock as this window sees it. */
import { useEffect, useState } from 'react'
import { nothing, useAsk } from './use-desk.ts'

/**
 * Milliseconds since 1970 on the desk's clock, moving on every so often.
 * A practice day runs on a clock of its own, so the difference to this computer's is added.
 */
export function useNow(everyMs = 10_000): number {
  const who = useAsk('who', nothing)
  const [hereMs, setHereMs] = useState(Date.now)
  useEffect(() => {
    const timer = setInterval(() => setHereMs(Date.now()), everyMs)
    return () => clearInterval(timer)
  }, [everyMs])
  return who.data === undefined ? hereMs : hereMs + who.data.nowMs - who.receivedMs
}
