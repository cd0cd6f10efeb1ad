/**
 * The one envelope in which every rule, command and query answers.
 * An expected refusal is a value; an exception is a bug.
 */
import { z } from 'zod'

/** Why the desk will not do a thing: told to a person, never thrown. */
export const Refusal = z.object({
  /** Stable machine name, kebab-case, e.g. `tag-already-here`. */
  code: z.string().regex(/^[a-z0-9-]+$/),
  /** One plain sentence: what is wrong. */
  say: z.string().min(1),
  /** One plain sentence: what to do now. */
  next: z.string().min(1),
  /** The input field at fault, as a dotted path. */
  field: z.string().optional(),
})
export type Refusal = z.infer<typeof Refusal>

export type Result<T> = { ok: true; value: T } | { ok: false; refusal: Refusal }

/** A granted request and what it yields. */
export function granted<T>(value: T): Result<T> {
  return { ok: true, value }
}

/** A refused request: the code, the sentence, and what to do next. */
export function refused(code: string, say: string, next: string, field?: string): Result<never> {
  return { ok: false, refusal: { code, say, next, ...(field === undefined ? {} : { field }) } }
}

/** Stops the compiler and the program where a union was not dealt with to its end. */
export function unreachable(value: never): never {
  throw new Error(`unreachable: ${JSON.stringify(value)}`)
}
