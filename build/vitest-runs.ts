import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { z } from 'zod'
import { root, runNode } from './steps.ts'
import { type Tally, tallyOfReport } from './tally.ts'

const vitest = 'node_modules/vitest/vitest.mjs'
const config = ['--config', 'build/vitest.config.ts']

/** The kinds of test that vitest.config.ts defines. */
export type TestKind = 'unit' | 'dom' | 'screens'

const projects = (kinds: readonly TestKind[]) => kinds.flatMap((kind) => ['--project', kind])

/** Runs the tests of some kinds, shows them as they go, and counts them. */
export function runTests(kinds: readonly TestKind[]): Tally {
  const file = join(root, '.cache', 'tests', `${kinds.join('-')}.json`)
  rmSync(file, { force: true })
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${file}`]
  const exitCode = runNode(vitest, ['run', ...config, ...projects(kinds), ...reporters])
  return tallyOfReport(
    existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : undefined,
    exitCode,
  )
}

/** Names the tests of a kind without running them, and counts them as skipped. */
export function skipTests(kind: TestKind): Tally {
  const args = [vitest, 'list', ...config, ...projects([kind]), '--json']
  const { stdout } = spawnSync(process.execPath, args, { cwd: root, encoding: 'utf8' })
  const tests = z.array(z.object({ name: z.string() })).parse(JSON.parse(stdout))
  for (const { name } of tests) console.log(`skipped: ${name}`)
  return { passed: 0, failed: 0, skipped: tests.length }
}
