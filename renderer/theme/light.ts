/** Day light, night light and high contrast: as the computer prefers, until someone here chooses. */
import { useEffect, useSyncExternalStore } from 'react'
import type { Light } from '../../shared-types/views/safekeeping.ts'
import { nothing, useAsk } from '../desk/use-desk.ts'

let chosen: Light | null = null
const listeners = new Set<() => void>()

const preferences = {
  contrast: '(prefers-contrast: more)',
  night: '(prefers-color-scheme: dark)',
} as const

const prefers = (light: keyof typeof preferences) => window.matchMedia(preferences[light])

function preferredLight(): Light {
  if (prefers('contrast').matches) return 'contrast'
  return prefers('night').matches ? 'night' : 'day'
}

/** The light that its key turns on next. */
export const nextLight: Record<Light, Light> = { day: 'night', night: 'contrast', contrast: 'day' }

export const lightWords: Record<Light, string> = {
  day: 'Day light',
  night: 'Night light',
  contrast: 'High contrast',
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
  prefers('night').addEventListener('change', applyLight)
  prefers('contrast').addEventListener('change', applyLight)
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
