/** What a verb ends with, and how it is told: words for a person or the result envelope for a machine. */
import type { Refusal, Result } from '../../shared-types/result.ts'

export interface Outcome {
  /** For a person, ready to print. */
  readonly text: string
  /** The same for a machine. */
  readonly value: unknown
  /** Why the verb was not done, or what it found wrong; null when all is well. */
  readonly refusal: Refusal | null
}

export function told(lines: readonly string[], value: unknown): Outcome {
  return { text: lines.map((line) => `${line}\n`).join(''), value, refusal: null }
}

export function notDone(refusal: Refusal): Outcome {
  return { text: '', value: null, refusal }
}

/** Goes on with what was granted, or ends with the refusal. */
export async function whenGranted<T>(
  result: Result<T>,
  goOn: (value: T) => Outcome | Promise<Outcome>,
): Promise<Outcome> {
  return result.ok ? goOn(result.value) : notDone(result.refusal)
}

/** The answer on stdout with `--json`: `ok`, then `value`, `refusal` or both. */
function envelope({ value, refusal }: Outcome): string {
  const found = value === null ? {} : { value }
  return `${JSON.stringify(refusal ? { ok: false, refusal, ...found } : { ok: true, value }, null, 2)}\n`
}

export interface Voice {
  readonly out: (text: string) => void
  readonly err: (text: string) => void
}

/** Tells an outcome; answers with the exit code: 0 done, 1 refused. */
export function tell(outcome: Outcome, json: boolean, { out, err }: Voice): 0 | 1 {
  out(json ? envelope(outcome) : outcome.text)
  if (!outcome.refusal) return 0
  err(`${outcome.refusal.say}\n${outcome.refusal.next}\n`)
  return 1
}
