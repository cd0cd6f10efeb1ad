/** Tells the desk that someone is at this window, so that one left alone locks by itself. */
import { useEffect } from 'react'
import { callDesk } from './answer.ts'
import { useConnection } from './desk-provider.tsx'

/** Often enough to keep the desk from locking, and no more. */
const everyMs = 30_000
const signs = ['keydown', 'pointerdown', 'wheel'] as const

export function useHere(isSignedIn: boolean): void {
  const connection = useConnection()
  useEffect(() => {
    if (!isSignedIn) return
    let toldMs = performance.now()
    const tell = () => {
      if (performance.now() - toldMs < everyMs) return
      toldMs = performance.now()
      void callDesk(connection, 'person.here', {})
    }
    for (const sign of signs) window.addEventListener(sign, tell, { passive: true })
    return () => {
      for (const sign of signs) window.removeEventListener(sign, tell)
    }
  }, [connection, isSignedIn])
}
