import { findBrowser } from './browser.ts'
import { checkSteps, passes, type Step } from './steps.ts'
import { bringMissing, browser, labelReaders, printing } from './system-packages.ts'
import { add, closingLine, type Tally } from './tally.ts'
import { runTests, skipTests } from './vitest-runs.ts'

const build: Step = { name: 'build', script: 'build/build.ts', args: [] }

function tallyOfStep(step: Step): Tally {
  const passed = passes(step)
  return { passed: passed ? 1 : 0, failed: passed ? 0 : 1, skipped: 0 }
}

bringMissing([browser, ...labelReaders, ...printing])
const steps = [...checkSteps, build].map(tallyOfStep)
const tests = runTests(['unit', 'dom'])
const screens = findBrowser() ? runTests(['screens']) : skipTests('screens')
const total = [...steps, tests, screens].reduce(add)
process.exitCode = total.failed > 0 ? 1 : 0
console.log(closingLine(total))
