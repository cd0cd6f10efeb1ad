/** `npm run faults [ROUNDS]`: a desk at work, each fault done to it, and a table of what was lost. */
import {
  clockJumps,
  diskFull,
  fileDeleted,
  fileLimit,
  fileReplaced,
  killed,
  type Outcome,
  readOnly,
  type Skipped,
  stickPulled,
  twoPrograms,
} from './faults.ts'

const rounds = Number(process.argv[2] ?? 500)

const heads = [
  'fault',
  'rounds',
  'acknowledged',
  'lost',
  'twice',
  'in flight',
  'whole',
  'bad copies',
]
const widths = [32, 8, 14, 6, 7, 11, 7, 12]

const row = (cells: readonly unknown[]) =>
  cells.map((cell, at) => String(cell).padEnd(widths[at] ?? 0)).join('')

function print(result: Outcome | Skipped): boolean {
  if ('why' in result) {
    console.log(`${result.fault.padEnd(widths[0] ?? 0)}not done: ${result.why}`)
    return true
  }
  const { fault, account, told, badBackups } = result
  const { acknowledged, lost, twice, unsaid, whole } = account
  console.log(
    row([
      fault,
      result.rounds,
      acknowledged,
      lost,
      twice,
      unsaid,
      whole ? 'yes' : 'NO',
      badBackups,
    ]),
  )
  if (told.length > 0) console.log(`    told: ${told.join('; ')}`)
  return lost === 0 && twice === 0 && whole && badBackups === 0 && acknowledged > 0
}

console.log(row(heads))
const results = [
  () => killed(rounds, Math.random),
  diskFull,
  fileLimit,
  readOnly,
  fileDeleted,
  fileReplaced,
  () => stickPulled(20, Math.random),
  clockJumps,
  twoPrograms,
]
let good = true
for (const each of results) good = print(await each()) && good
console.log(good ? 'Nothing acknowledged was lost.' : 'SOMETHING WAS LOST OR NOT TOLD.')
process.exitCode = good ? 0 : 1
