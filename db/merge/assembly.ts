/** Putting parts together into the merged log, each as it comes. */
import { granted, type Result } from '../../shared-types/result.ts'
import type { DeskId } from '../../shared-types/sample-number.ts'
import { beginTarget, type Target } from './target.ts'

export class Assembly {
  readonly #out: string
  readonly #office: DeskId | null
  #target: Target | null = null
  #complete: () => void = () => undefined

  constructor(out: string, office: DeskId | null) {
    this.#out = out
    this.#office = office
  }

  /** Takes parts in beside those taken before. No two of them may have entries that meet in a row. */
  take(parts: readonly string[]): Result<void> {
    const begun = this.#target ? granted(this.#target) : this.#begin()
    if (!begun.ok) return begun
    for (const part of parts) begun.value.takePart(part)
    return granted(undefined)
  }

  /** Forgets what was taken, and takes these. */
  takeAnew(parts: readonly string[]): Result<void> {
    this.drop()
    return this.take(parts)
  }

  #begin(): Result<Target> {
    const begun = beginTarget(this.#out, this.#office)
    if (!begun.ok) return begun
    this.#target = begun.value
    this.#complete = begun.value.forParts()
    return begun
  }

  /** Completes the merged log and puts it in its place. */
  finish(): Result<void> {
    this.#complete()
    return this.#target?.finish() ?? granted(undefined)
  }

  drop(): void {
    this.#target?.drop()
    this.#target = null
  }
}
