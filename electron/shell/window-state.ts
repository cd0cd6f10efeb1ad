/** Where the first window stood when it was last closed. */
import { readFileSync, writeFileSync } from 'node:fs'
import { type BrowserWindow, type Rectangle, screen } from 'electron'
import { z } from 'zod'

const State = z.object({
  x: z.int(),
  y: z.int(),
  width: z.int().min(800).max(20_000),
  height: z.int().min(600).max(20_000),
  maximized: z.boolean(),
})
export type WindowState = z.infer<typeof State>

/** The kept state; undefined if there is none, or if that screen is no longer there. */
export function readWindowState(path: string): WindowState | undefined {
  try {
    const state = State.parse(JSON.parse(readFileSync(path, 'utf8')))
    return screen.getAllDisplays().some(({ workArea }) => overlaps(state, workArea))
      ? state
      : undefined
  } catch {
    return undefined
  }
}

/** Keeps where a window stands when it closes. */
export function keepWindowState(window: BrowserWindow, path: string): void {
  window.on('close', () => {
    const state: WindowState = { ...window.getNormalBounds(), maximized: window.isMaximized() }
    try {
      writeFileSync(path, JSON.stringify(state))
    } catch {
      // It opens in the middle next time.
    }
  })
}

/** Enough of it must be on the screen to take hold of it. */
function overlaps(a: Rectangle, b: Rectangle): boolean {
  const wide = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x)
  const high = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y)
  return wide > 200 && high > 100
}
