/** A desk at work in a program of its own, and what it was told. */
import { type ChildProcess, spawn } from 'node:child_process'
import { fileURLToPath } from 'node:url'

export const leadPin = '4821'

/** What the program is to do. */
export interface Work {
  readonly folder: string
  /** Makes the tags of this run its own. */
  readonly seed: number
  readonly clock: 'steady' | 'jumping'
  /** A folder for backups, or null. */
  readonly backup: string | null
  /** How many refusals it takes before it gives up. */
  readonly refusals: number
}

/** What a program said before it ended. */
export interface Said {
  /** `kind number` of each acknowledged action, in order. */
  readonly acknowledged: readonly string[]
  readonly refusals: readonly string[]
  readonly backups: readonly string[]
}

/** Compiled once, the program starts in a third of the time. */
const env = {
  ...process.env,
  NODE_COMPILE_CACHE: fileURLToPath(new URL('../../.cache/node', import.meta.url)),
}

const program = fileURLToPath(new URL('desk-at-work.ts', import.meta.url))

export class DeskAtWork {
  readonly process: ChildProcess
  readonly #ended: Promise<void>
  #text = ''
  #waiting: { lines: number; go: () => void }[] = []

  /** `underLimit`: no file may grow beyond so many KiB. */
  constructor(work: Partial<Work> & Pick<Work, 'folder' | 'seed'>, underLimit?: number) {
    const whole: Work = { clock: 'steady', backup: null, refusals: 20, ...work }
    const args = [program, JSON.stringify(whole)]
    this.process =
      underLimit === undefined
        ? spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'], env })
        : spawn(
            'bash',
            ['-c', `ulimit -f ${underLimit}; exec "$0" "$@"`, process.execPath, ...args],
            { stdio: ['ignore', 'pipe', 'inherit'], env },
          )
    this.process.stdout?.setEncoding('utf8').on('data', (text: string) => this.#hear(text))
    this.#ended = new Promise((resolve) => this.process.once('close', () => resolve()))
    void this.#ended.then(() => this.#release(Number.POSITIVE_INFINITY))
  }

  #hear(text: string): void {
    this.#text += text
    this.#release(this.#text.split('\n').length - 1)
  }

  #release(lines: number): void {
    const due = this.#waiting.filter((each) => each.lines <= lines)
    this.#waiting = this.#waiting.filter((each) => each.lines > lines)
    for (const { go } of due) go()
  }

  /** Until it has said so many lines more than it has by now, or has ended. */
  saysMore(lines: number): Promise<void> {
    const wanted = this.#text.split('\n').length - 1 + lines
    return Promise.race([
      this.#ended,
      new Promise<void>((resolve) => this.#waiting.push({ lines: wanted, go: resolve })),
    ])
  }

  /** Ends it as a power cut would end it, and answers with all it had said. */
  async kill(): Promise<Said> {
    this.process.kill('SIGKILL')
    return this.ended()
  }

  async ended(): Promise<Said> {
    await this.#ended
    // The last line may be cut short by the kill: nobody was told that.
    const lines = this.#text.split('\n').slice(0, -1)
    const those = (mark: string) =>
      lines.filter((line) => line.startsWith(mark)).map((line) => line.slice(2))
    return { acknowledged: those('+'), refusals: those('-'), backups: those('~') }
  }
}
