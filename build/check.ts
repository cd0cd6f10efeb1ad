import { checkSteps, passes } from './steps.ts'

const failed = checkSteps.filter((step) => !passes(step))
process.exitCode = failed.length > 0 ? 1 : 0
