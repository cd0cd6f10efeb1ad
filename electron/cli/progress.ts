/** How far a practice day is, for a person who watches; silent where nobody does. */
import type { DayWish } from '../desk/practice/day.ts'

export interface Progress {
  readonly tell: DayWish['progress']
  /** Clears the line. */
  readonly end: () => void
}

export function createProgress(stream: NodeJS.WriteStream): Progress {
  if (!stream.isTTY) return { tell: () => undefined, end: () => undefined }
  let shown = ''
  return {
    tell: (desk, done, total) => {
      const line = `Playing desk ${desk}: ${Math.floor((done / total) * 100)} %`
      if (line !== shown) stream.write(`\r${line}`)
      shown = line
    },
    end: () => stream.write(`\r${' '.repeat(shown.length)}\r`),
  }
}
