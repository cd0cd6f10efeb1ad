import { describe, expect, test } from 'vitest'
import { closingLine, reportFrom, skippedIn, tallyOfReport } from '../../build/tally.ts'

const tests = (...statuses: string[]) =>
  statuses.map((status, place) => ({ status, fullName: `test ${place}` }))

const report = (success: boolean, ...files: { status: string; statuses: string[] }[]) => ({
  success,
  testResults: files.map(({ status, statuses }, place) => ({
    name: `file-${place}.test.ts`,
    status,
    assertionResults: tests(...statuses),
  })),
})

describe('a run of tests is counted', () => {
  test('by its tests', () => {
    const run = report(
      false,
      { status: 'passed', statuses: ['passed', 'passed', 'skipped', 'todo'] },
      { status: 'failed', statuses: ['passed', 'failed'] },
    )
    expect(tallyOfReport(run, 1)).toEqual({ passed: 3, failed: 1, skipped: 2 })
  })

  test('with a failure for a file that could not be read', () => {
    const run = report(false, { status: 'failed', statuses: [] })
    expect(tallyOfReport(run, 1)).toEqual({ passed: 0, failed: 1, skipped: 0 })
  })

  test('with a failure when an error came from outside the tests', () => {
    const run = report(true, { status: 'passed', statuses: ['passed'] })
    expect(tallyOfReport(run, 1)).toEqual({ passed: 1, failed: 1, skipped: 0 })
  })

  test('as failed when it left no report', () => {
    expect(tallyOfReport(undefined, 0).failed).toBe(1)
  })
})

test('the tests that did not run are named', () => {
  const json = JSON.stringify(report(true, { status: 'passed', statuses: ['passed', 'skipped'] }))
  expect(skippedIn(reportFrom(json))).toEqual(['test 1'])
})

test('a report of another shape is not counted', () => {
  expect(() => reportFrom('{"tests":3}')).toThrow()
})

test('the closing line names the skipped only when there are some', () => {
  expect(closingLine({ passed: 12, failed: 0, skipped: 0 })).toBe('12 passed, 0 failed')
  expect(closingLine({ passed: 9, failed: 1, skipped: 2 })).toBe('9 passed, 1 failed, 2 skipped')
})
