/** The verbs of laboratory results: `check-results`, `overdue` and `practice-results`. */
import { resolve } from 'node:path'
import { InvalidArgumentError } from 'commander'
import type { AddVerb, ProgramDeps } from './program.ts'

const load = () => import('./verbs/results.ts')

function seedOf(text: string): number {
  if (/^\d{1,9}$/.test(text)) return Number(text)
  throw new InvalidArgumentError('A whole number of up to nine digits is wanted.')
}

export function addResultVerbs(add: AddVerb, { cwd, end }: ProgramDeps): void {
  const at = (path: string) => resolve(cwd, path)
  add('check-results <file> <log>', 'what a laboratory file would bring, and what is in doubt')
    .option('--laboratory <name>', 'whose file it is, if not that of the last one read in')
    .action(async (file: string, log: string, { json, laboratory }) => {
      const { checkResults } = await load()
      end(await checkResults(at(file), at(log), laboratory ?? null), json)
    })
  add('overdue <log>', 'bags given to a courier and without a result, oldest first')
    .option('--out <csv>', 'a new file instead of stdout')
    .action(async (log: string, { json, out }) => {
      const { overdue } = await load()
      end(await overdue(at(log), out ? at(out) : null), json)
    })
  add('practice-results <log>', 'a laboratory file for a practice log, with bad rows planted in it')
    .option('--seed <number>', 'the same seed, the same file', seedOf, 1)
    .requiredOption('--out <csv>', 'the new file')
    .action(async (log: string, { json, seed, out }) => {
      const { practiceResults } = await load()
      end(await practiceResults(at(log), seed, at(out)), json)
    })
}
