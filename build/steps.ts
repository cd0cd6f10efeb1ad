import { spawnSync } from 'node:child_process'
import { join } from 'node:path'

/** The project's root folder; every step runs there. */
export const root = join(import.meta.dirname, '..')

/** Runs a script under this very Node, its output shown as it comes; answers its exit code. */
export function runNode(script: string, args: readonly string[] = []): number {
  // A test runner's NODE_ENV would make React's slow development build of the screens.
  const { NODE_ENV: _, ...env } = process.env
  const { status } = spawnSync(process.execPath, [script, ...args], {
    cwd: root,
    stdio: 'inherit',
    env,
  })
  return status ?? 1
}

/** A named check that passes when its script exits with 0. */
export interface Step {
  readonly name: string
  readonly script: string
  readonly args: readonly string[]
}

/** What is checked without running the program. */
export const checkSteps: readonly Step[] = [
  { name: 'types', script: 'node_modules/typescript/bin/tsc', args: ['--build'] },
  { name: 'format', script: 'node_modules/@biomejs/biome/bin/biome', args: ['format'] },
  {
    name: 'lint',
    script: 'node_modules/oxlint/bin/oxlint',
    args: ['--type-aware', '--report-unused-disable-directives'],
  },
  { name: 'layers', script: 'build/check-layers.ts', args: [] },
]

/** Runs one check and tells how it went; true when it passed. */
export function passes({ name, script, args }: Step): boolean {
  const ok = runNode(script, args) === 0
  console.log(`${ok ? 'passed' : 'FAILED'}: ${name}`)
  return ok
}
