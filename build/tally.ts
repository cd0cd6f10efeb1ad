import { z } from 'zod'

/** How many checks and tests went which way. */
export interface Tally {
  readonly passed: number
  readonly failed: number
  readonly skipped: number
}

/** The part of Vitest's JSON report that is counted. */
const Report = z.object({
  success: z.boolean(),
  testResults: z.array(
    z.object({
      name: z.string(),
      status: z.string(),
      assertionResults: z.array(z.object({ status: z.string(), fullName: z.string() })),
    }),
  ),
})
export type Report = z.infer<typeof Report>

export function add(a: Tally, b: Tally): Tally {
  return {
    passed: a.passed + b.passed,
    failed: a.failed + b.failed,
    skipped: a.skipped + b.skipped,
  }
}

function tallyOfFile({ status, assertionResults }: Report['testResults'][number]): Tally {
  const count = (wanted: string) => assertionResults.filter((t) => t.status === wanted).length
  const passed = count('passed')
  const failed = count('failed')
  // A file that could not even be read has no failed test, yet its tests did not pass.
  const unread = status === 'failed' && failed === 0 ? 1 : 0
  return {
    passed,
    failed: failed + unread,
    skipped: assertionResults.length - passed - failed,
  }
}

/** Reads what Vitest's JSON reporter wrote. */
export function reportFrom(json: string): Report {
  return Report.parse(JSON.parse(json))
}

/** The full names of the tests that did not run. */
export function skippedIn({ testResults }: Report): string[] {
  return testResults.flatMap(({ assertionResults }) =>
    assertionResults
      .filter(({ status }) => status !== 'passed' && status !== 'failed')
      .map(({ fullName }) => fullName.trim()),
  )
}

/**
 * Counts a report. A run that did not succeed counts at least one failure, whatever its tests say:
 * an error outside a test, or no report at all, must never look like success.
 */
export function tallyOfReport(report: Report | undefined, exitCode: number): Tally {
  const files = report?.testResults.map(tallyOfFile) ?? []
  const tally = files.reduce(add, { passed: 0, failed: 0, skipped: 0 })
  const isUnexplained = tally.failed === 0 && (!report?.success || exitCode !== 0)
  return isUnexplained ? { ...tally, failed: 1 } : tally
}

/** The last line of a test run. */
export function closingLine({ passed, failed, skipped }: Tally): string {
  return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`
}
