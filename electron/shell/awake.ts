/** Keeps the laptop from falling asleep over an open line. */
import { powerSaveBlocker } from 'electron'

export interface Awake {
  /** Told whether a log is open; while one is, the laptop stays awake. */
  readonly set: (isOpen: boolean) => void
}

export function createAwake(): Awake {
  let blocker: number | undefined
  return {
    set(isOpen) {
      if (isOpen && blocker === undefined) blocker = powerSaveBlocker.start('prevent-display-sleep')
      if (isOpen || blocker === undefined) return
      powerSaveBlocker.stop(blocker)
      blocker = undefined
    },
  }
}
