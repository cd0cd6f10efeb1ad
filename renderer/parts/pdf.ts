/** A PDF made by the desk: shown in a tab of its own, and offered for saving. */
import { useSyncExternalStore } from 'react'
import type { PdfFile } from '../../shared-types/views/common.ts'

export interface ReadyFile {
  readonly name: string
  readonly url: string
}

let ready: ReadyFile | undefined
const listeners = new Set<() => void>()

function set(file: ReadyFile | undefined): void {
  if (ready) URL.revokeObjectURL(ready.url)
  ready = file
  for (const listener of listeners) listener()
}

/** Opens the PDF in a new tab and offers saving it at the foot of the window. */
export function openPdf(file: PdfFile): void {
  const bytes = Uint8Array.from(atob(file.base64), (character) => character.charCodeAt(0))
  const url = URL.createObjectURL(new Blob([bytes], { type: 'application/pdf' }))
  set({ name: file.name, url })
  window.open(url, '_blank', 'noopener')
}

/** Saves text made by the desk, such as a list or a manifest for machines. */
export function saveText(file: { name: string; text: string }): void {
  const url = URL.createObjectURL(new Blob([file.text], { type: 'text/plain' }))
  saveUrl(file.name, url)
  setTimeout(() => URL.revokeObjectURL(url), 10_000)
}

export function saveUrl(name: string, url: string): void {
  const link = document.createElement('a')
  link.href = url
  link.download = name
  link.click()
}

/** The offer is done with. */
export function putPdfAway(): void {
  set(undefined)
}

export function useReadyPdf(): ReadyFile | undefined {
  return useSyncExternalStore(
    (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    () => ready,
  )
}
