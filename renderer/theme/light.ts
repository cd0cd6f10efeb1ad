/** Day and night light: as the computer prefers, until someone at this laptop chooses. */
import { useEffect, useSyncExternalStore } from 'react'
import type { Light } from '../../shared-types/views/safekeeping.ts'
import { nothing, useAsk } from '../desk/use-desk.ts'

let chosen: Light | null = null
const listeners = new Set<() => void>()

function preferredLight(): Light {
  return window.matchMedia('(prefers-color-scheme: dark)').matches ? 'night' : 'day'
}

const currentLight = (): Light => chosen ?? preferredLight()

/** Puts the light on the page; the colours follow from `data-light`. */
function applyLight(): void {
  document.documentElement.dataset.light = currentLight()
  for (const listener of listeners) listener()
}

/** Applies the light now, and again when the computer's own preference turns at dusk. */
export function keepLight(): void {
  applyLight()
  window.matchMedia('(prefers-color-scheme: dark)').addEventListener('change', applyLight)
}

/** The choice lies with the desk: what a browser keeps for a page goes when its port changes. */
export function useChosenLight(): void {
  const light = useAsk('light', nothing).data?.light
  useEffect(() => {
    if (light === undefined) return
    chosen = light
    applyLight()
  }, [light])
}

export function useLight(): Light {
  return useSyncExternalStore((listener) => {
    listeners.add(listener)
    return () => listeners.delete(listener)
  }, currentLight)
}
