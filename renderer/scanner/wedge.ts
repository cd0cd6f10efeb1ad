/**
 * Tells a keyboard-wedge scanner from a person by its speed.
 * A scanner types at least six characters with under 35 ms between them and ends with Enter or Tab
 * (common practice, no source; a fast typist needs about 80 ms a key).
 */
export const leastCharacters = 6
export const longestGapMs = 35

/** What one key press means: `first` may begin a scan, `more` goes on with one, `scan` ends one. */
export type Press =
  | { readonly is: 'first' | 'more' | 'other' }
  | { readonly is: 'scan'; readonly text: string }

export interface Wedge {
  /** One key press: `key` as in KeyboardEvent.key, `atMs` its time in milliseconds. */
  press(key: string, atMs: number): Press
}

/** A recogniser that has seen nothing yet. */
export function createWedge(): Wedge {
  let text = ''
  let lastMs = Number.NEGATIVE_INFINITY
  function end(fast: boolean): Press {
    const scanned = text
    text = ''
    return fast && scanned.length >= leastCharacters
      ? { is: 'scan', text: scanned }
      : { is: 'other' }
  }
  return {
    press(key, atMs) {
      // A scanner holds Shift for capitals.
      if (key === 'Shift') return { is: 'other' }
      const fast = atMs - lastMs < longestGapMs
      lastMs = atMs
      if (key === 'Enter' || key === 'Tab') return end(fast)
      if (key.length !== 1) return end(false)
      text = fast ? text + key : key
      return { is: text.length === 1 ? 'first' : 'more' }
    },
  }
}
