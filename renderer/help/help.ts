/** What help is open about, in this window. */
import { useSyncExternalStore } from 'react'
import type { HelpPageName } from '../../shared-types/help/pages.ts'
import { type KeyLine, keyLines } from './key-lines.ts'

export type HelpTopic =
  | { readonly is: 'refusal'; readonly code: string }
  | { readonly is: 'page'; readonly page: HelpPageName }
  | { readonly is: 'all' }

export interface OpenHelp {
  readonly topic: HelpTopic
  /** The keys as they were when help was opened: its own dialog has others. */
  readonly keys: readonly KeyLine[]
}

let open: OpenHelp | undefined
const listeners = new Set<() => void>()

function set(help: OpenHelp | undefined): void {
  open = help
  for (const listener of listeners) listener()
}

/** Opens help, or turns to another topic of it. */
export function openHelp(topic: HelpTopic): void {
  set({ topic, keys: open?.keys ?? keyLines() })
}

/** Help for what is on the screen: the refusal that stands there, else everything. */
export function openHelpHere(): void {
  const shown = [...document.querySelectorAll<HTMLElement>('[data-refusal]')].at(-1)
  const code = shown?.dataset.refusal ?? ''
  openHelp(code === '' ? { is: 'all' } : { is: 'refusal', code })
}

export function closeHelp(): void {
  set(undefined)
}

export function useHelp(): OpenHelp | undefined {
  return useSyncExternalStore(
    (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    () => open,
  )
}
