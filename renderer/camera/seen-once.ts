/** A label held before the camera is seen many times a second, and is scanned once. */

/** As long as a label must be gone before it counts again, in milliseconds. */
const goneMs = 1500

/** Whether what is seen now is new: `see(text, atMs)`, with null for nothing. */
export function createSeenOnce(): (text: string | null, atMs: number) => boolean {
  let last: string | null = null
  let lastMs = Number.NEGATIVE_INFINITY
  return (text, atMs) => {
    if (text === null) return false
    const isNew = text !== last || atMs - lastMs > goneMs
    last = text
    lastMs = atMs
    return isNew
  }
}
