/** How far a long task is, for a person who watches; silent where nobody does. */
import type { DayWish } from '../desk/practice/day.ts'

export interface Progress {
  readonly tell: DayWish['progress']
  /** How far another long task is, 0 to 1. */
  readonly say: (what: string, share: number) => void
  /** Clears the line. */
  readonly end: () => void
}

export function createProgress(stream: NodeJS.WriteStream): Progress {
  if (!stream.isTTY) return { tell: () => undefined, say: () => undefined, end: () => undefined }
  let shown = ''
  const say = (what: string, share: number) => {
    const line = `${what}: ${Math.floor(share * 100)} %`
    if (line !== shown) stream.write(`\r${line}`)
    shown = line
  }
  return {
    tell: (desk, done, total) => say(`Playing desk ${desk}`, done / total),
    say,
    end: () => stream.write(`\r${' '.repeat(shown.length)}\r`),
  }
}
