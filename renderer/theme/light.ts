/** Day and night light: as the computer prefers, until the person at this window chooses. */
import { useSyncExternalStore } from 'react'

export type Light = 'day' | 'night'

const settingKey = 'duskline.light'
const listeners = new Set<() => void>()

function preferredLight(): Light {
  return window.matchMedia('(prefers-color-scheme: dark)').matches ? 'night' : 'day'
}

function chosenLight(): Light {
  const chosen = localStorage.getItem(settingKey)
  return chosen === 'day' || chosen === 'night' ? chosen : preferredLight()
}

/** Puts the light on the page; the colours follow from `data-light`. */
function applyLight(): void {
  document.documentElement.dataset.light = chosenLight()
  for (const listener of listeners) listener()
}

export function switchLight(): void {
  localStorage.setItem(settingKey, chosenLight() === 'day' ? 'night' : 'day')
  applyLight()
}

/** Applies the light now, and again when the computer's own preference turns at dusk. */
export function keepLight(): void {
  applyLight()
  window.matchMedia('(prefers-color-scheme: dark)').addEventListener('change', applyLight)
}

export function useLight(): Light {
  return useSyncExternalStore((listener) => {
    listeners.add(listener)
    return () => listeners.delete(listener)
  }, chosenLight)
}
