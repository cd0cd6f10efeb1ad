/** A second window on the same desk, with its own person signed in. */

/** Electron opens windows from its own menu; a browser window opens them itself. */
export function isOpenedHere(): boolean {
  return window.duskline === undefined
}

/** This browser has been let in already, so the same address opens a further window. */
export function openSecondWindow(): void {
  window.open('/', '_blank', 'noopener,popup')
}

/** The line for a screen outside, which nobody has to be signed in for. */
export function openBoardWindow(): void {
  window.open('/#board', '_blank', 'noopener,popup')
}
