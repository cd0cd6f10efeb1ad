/**
 * What the program did, for whoever has to find out why it did not do it: names of calls and refusals,
 * never what was typed. No person, tag, number or path can get in, since none is ever handed over.
 */
import { appendFileSync, readFileSync, renameSync, statSync } from 'node:fs'
import { join } from 'node:path'

/** A new file is begun at this size; the one before is kept. */
const mostBytes = 512 * 1024

export type Facts = Readonly<Record<string, string | number>>

export class Diary {
  readonly #path: string
  readonly #now: () => number

  constructor(folder: string, now: () => number) {
    this.#path = join(folder, 'duskline.log')
    this.#now = now
  }

  /** Adds a line. A disk that does not take it must not keep anyone from working. */
  note(event: string, facts: Facts = {}): void {
    try {
      this.#turnOver()
      const at = new Date(this.#now()).toISOString()
      appendFileSync(this.#path, `${JSON.stringify({ at, event, ...facts })}\n`)
    } catch {
      // Nothing is lost that anyone works with.
    }
  }

  /** A fault of the program: its kind and where in our own files it arose, not its message. */
  noteFault(where: string, fault: unknown): void {
    this.note('fault', { where, ...faultFacts(fault) })
  }

  /** The latest lines, oldest first. */
  latest(lines: number): string[] {
    try {
      return readFileSync(this.#path, 'utf8').trimEnd().split('\n').slice(-lines)
    } catch {
      return []
    }
  }

  #turnOver(): void {
    const size = statSync(this.#path, { throwIfNoEntry: false })?.size ?? 0
    if (size > mostBytes) renameSync(this.#path, `${this.#path}.old`)
  }
}

/** A message may quote what was typed; the name, the code and the places in the files do not. */
function faultFacts(fault: unknown): Facts {
  if (!(fault instanceof Error)) return { name: typeof fault }
  const places = [...(fault.stack ?? '').matchAll(/([\w.-]+\.[cm]?[jt]sx?:\d+):\d+/g)]
  const code = 'code' in fault ? String(fault.code) : ''
  return {
    name: fault.name,
    code,
    places: places
      .slice(0, 6)
      .map(([, place]) => place)
      .join(' '),
  }
}
