/**
 * Tells a keyboard-wedge scanner from a person by its speed.
 * A scanner types at least six characters with under 35 ms between them and ends with Enter or Tab
 * (common practice, no source; a fast typist needs about 80 ms a key). A busy computer or a wireless
 * scanner may stutter: runs with short pauses between them are one scan if together they are one of
 * our numbers, which its check character tells.
 */
export const leastCharacters = 6
export const longestGapMs = 35
/** A pause within a scan that stutters; a longer one breaks it. */
export const longestStutterMs = 150
/** Pieces further apart than this are not of one scan. */
const longestBreakMs = 3000

/**
 * What one key press means: `first` may begin a scan, `more` goes on with one, `scan` ends one.
 * `runs`: of how many runs it was put together.
 */
export type Press =
  | { readonly is: 'first' | 'more' | 'other' }
  /** The end of a scan that a pause has broken. */
  | { readonly is: 'pieces' }
  | { readonly is: 'scan'; readonly text: string; readonly runs: number }

export interface Wedge {
  /** One key press: `key` as in KeyboardEvent.key, `atMs` its time in milliseconds. */
  press(key: string, atMs: number): Press
}

/** A person's keys are runs of one. */
function lengthOfFast(runs: readonly string[]): number {
  return runs.filter((run) => run.length > 1).join('').length
}

/** A recogniser that has seen nothing yet. */
export function createWedge(isOurNumber: (text: string) => boolean): Wedge {
  let runs: string[] = []
  let lastMs = Number.NEGATIVE_INFINITY
  /** Fast characters before a pause that broke them off. */
  let broken = 0

  function breakOff(gap: number): void {
    broken = gap < longestBreakMs ? broken + lengthOfFast(runs) : 0
    runs = []
  }

  function end(isFast: boolean): Press {
    const [scanned, before] = [runs, broken]
    runs = []
    broken = 0
    if (!isFast) return { is: 'other' }
    // The last runs are the scan; what a person typed just before it is theirs.
    for (let count = 1; count <= scanned.length; count += 1) {
      const joined = scanned.slice(-count).join('')
      if (isOurNumber(joined)) return { is: 'scan', text: joined, runs: count }
    }
    const text = scanned.at(-1) ?? ''
    const fast = before + lengthOfFast(scanned)
    const isBroken = fast > text.length && fast >= leastCharacters
    if (isBroken) return { is: 'pieces' }
    return text.length >= leastCharacters ? { is: 'scan', text, runs: 1 } : { is: 'other' }
  }

  return {
    press(key, atMs) {
      // A scanner holds Shift for capitals.
      if (key === 'Shift') return { is: 'other' }
      const gap = atMs - lastMs
      lastMs = atMs
      if (gap >= longestStutterMs) breakOff(gap)
      if (key === 'Enter' || key === 'Tab') return end(gap < longestGapMs)
      if (key.length !== 1) return end(false)
      const run = gap < longestGapMs ? (runs.pop() ?? '') + key : key
      runs.push(run)
      return { is: run.length === 1 ? 'first' : 'more' }
    },
  }
}
