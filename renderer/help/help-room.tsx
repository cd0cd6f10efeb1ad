import { lazy, Suspense } from 'react'
import { closeHelp, useHelp } from './help.ts'

/** Loaded when it is first asked for, so that it costs the start nothing. */
const HelpDialog = lazy(async () => ({ default: (await import('./help-dialog.tsx')).HelpDialog }))

/** Where help opens, beside whatever is on the screen. */
export function HelpRoom() {
  const help = useHelp()
  return (
    <Suspense fallback={null}>{help && <HelpDialog help={help} onClose={closeHelp} />}</Suspense>
  )
}
