import type { LabelRun } from '../../electron/print/label-run.ts'
import type { Result } from '../../shared-types/result.ts'

/** What was granted; a refusal fails the test with its own words. */
export function yes<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.refusal.say)
  return result.value
}

/** What each page of a run says, in the order in which it was laid out. */
export function words(run: LabelRun): string[] {
  return run.pages.map(({ marks }) =>
    marks
      .map((mark) => (mark.kind === 'text' ? mark.text : ''))
      .filter(Boolean)
      .join(' '),
  )
}
