import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { z } from 'zod'
import { root, runNode } from './steps.ts'
import { type Report, reportFrom, skippedIn, type Tally, tallyOfReport } from './tally.ts'

const vitest = 'node_modules/vitest/vitest.mjs'
const config = ['--config', 'build/vitest.config.ts']

/** The kinds of test that vitest.config.ts defines. */
export type TestKind = 'unit' | 'dom' | 'screens'

const projects = (kinds: readonly TestKind[]) => kinds.flatMap((kind) => ['--project', kind])

function readReport(file: string): Report | undefined {
  return existsSync(file) ? reportFrom(readFileSync(file, 'utf8')) : undefined
}

function sayWhatWasSkipped(names: readonly string[]): void {
  for (const name of names) console.log(`skipped: ${name}`)
}

/** Runs the tests of some kinds, shows them as they go, and counts them. */
export function runTests(kinds: readonly TestKind[]): Tally {
  const file = join(root, '.cache', 'tests', `${kinds.join('-')}.json`)
  rmSync(file, { force: true })
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${file}`]
  const exitCode = runNode(vitest, ['run', ...config, ...projects(kinds), ...reporters])
  const report = readReport(file)
  sayWhatWasSkipped(report ? skippedIn(report) : [])
  return tallyOfReport(report, exitCode)
}

/** Names the tests of a kind without running them, and counts them as skipped. */
export function skipTests(kind: TestKind): Tally {
  const args = [vitest, 'list', ...config, ...projects([kind]), '--json']
  const { stdout, stderr, status } = spawnSync(process.execPath, args, {
    cwd: root,
    encoding: 'utf8',
  })
  if (status !== 0) {
    console.error(stderr)
    return { passed: 0, failed: 1, skipped: 0 }
  }
  const tests = z.array(z.object({ name: z.string() })).parse(JSON.parse(stdout))
  sayWhatWasSkipped(tests.map((test) => test.name))
  return { passed: 0, failed: 0, skipped: tests.length }
}
