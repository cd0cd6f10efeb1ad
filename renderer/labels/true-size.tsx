/** A screen does not say how large its dots are, so a card of a known size is held against it once. */
import { useSyncExternalStore } from 'react'

/** ISO/IEC 7810 ID-1: a bank or licence card is 85.60 mm wide and 53.98 mm high. */
const cardMm = { width: 85.6, height: 53.98 }

const settingKey = 'duskline.screenScale'
const listeners = new Set<() => void>()

/** By how much a millimetre of a style sheet is too small on this screen. */
function scaleHere(): number {
  const kept = Number(localStorage.getItem(settingKey))
  return kept >= 0.5 && kept <= 2 ? kept : 1
}

function setScale(scale: number): void {
  localStorage.setItem(settingKey, String(scale))
  for (const listener of listeners) listener()
}

export function useScreenScale(): number {
  return useSyncExternalStore((listener) => {
    listeners.add(listener)
    return () => listeners.delete(listener)
  }, scaleHere)
}

/** A box that must be as large as a card. */
export function CardCheck() {
  const scale = useScreenScale()
  return (
    <details className="card-check">
      <summary>Is this its true size? Hold a bank card against the box</summary>
      <div
        className="card-box"
        style={{ width: `${cardMm.width * scale}mm`, height: `${cardMm.height * scale}mm` }}
      />
      <label>
        Smaller or larger, until the card covers the box
        <input
          type="range"
          min={0.5}
          max={2}
          step={0.005}
          value={scale}
          onChange={(event) => setScale(Number(event.target.value))}
        />
      </label>
    </details>
  )
}
