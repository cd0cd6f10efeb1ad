/** From what a rule decided to what a command writes and answers. */
import type { EntryDraft } from '../../shared-types/entry.ts'
import { granted, type Result } from '../../shared-types/result.ts'
import type { Decision } from './call.ts'

/** The drafts of a rule, with the answer to give once they are on disk; a refusal stays one. */
export function decided<T>(drafts: Result<readonly EntryDraft[]>, value: T): Result<Decision<T>> {
  return drafts.ok ? granted({ drafts: drafts.value, value }) : drafts
}

/** For commands that answer nothing but that it is done. */
export function done(
  drafts: Result<readonly EntryDraft[]>,
): Result<Decision<Record<string, never>>> {
  return decided(drafts, {})
}
