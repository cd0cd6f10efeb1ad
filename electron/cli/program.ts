/** The verbs of the command line and what each takes. */
import { resolve } from 'node:path'
import { Command, InvalidArgumentError, Option } from 'commander'
import { deskApi } from '../../shared-types/desk-api.ts'
import { LocalDate } from '../../shared-types/local-date.ts'
import { mostDesks } from '../desk/practice/day.ts'
import type { Outcome } from './outcome.ts'
import type { Progress } from './progress.ts'
import { exportTable } from './verbs/export.ts'
import { close, labels, manifest } from './verbs/papers.ts'
import { practice } from './verbs/practice.ts'
import { rebuild } from './verbs/rebuild.ts'
import { verify } from './verbs/verify.ts'

export interface ProgramDeps {
  /** What paths are relative to. */
  readonly cwd: string
  readonly progress: Progress
  /** Given what a verb ends with and whether `--json` was asked for. */
  readonly end: (outcome: Outcome, json: boolean) => void
}

function wholeNumber(low: number, high: number) {
  return (text: string): number => {
    const number = /^\d{1,10}$/.test(text) ? Number(text) : Number.NaN
    if (number >= low && number <= high) return number
    throw new InvalidArgumentError(`A whole number from ${low} to ${high} is wanted.`)
  }
}

function calendarDay(text: string): LocalDate {
  const date = LocalDate.safeParse(text)
  if (date.success) return date.data
  throw new InvalidArgumentError('A day like 2026-11-14 is wanted.')
}

const tables = deskApi.table.input.shape

/** Builds the program. It throws commander's own error for a wrong call, having said what is wrong. */
export function createProgram({ cwd, progress, end }: ProgramDeps): Command {
  const at = (path: string) => resolve(cwd, path)
  const program = new Command('duskline')
    .description('A station log from the terminal. Reading verbs leave the file as it is.')
    .exitOverride()
    .showHelpAfterError('Add --help to see what is wanted.')

  /** Each verb answers with an outcome, told in words or, with --json, as one JSON value. */
  const verb = (usage: string, description: string) =>
    program.command(usage).description(description).option('--json', 'answer as JSON on stdout')

  verb('practice', 'play an invented opening day into an empty folder')
    .option('--animals <count>', 'animals of the whole station', wholeNumber(1, 5000), 120)
    .option('--desks <count>', 'desks that share them', wholeNumber(1, mostDesks), 1)
    .option('--seed <number>', 'the same seed, the same day', wholeNumber(0, 2 ** 32 - 1), 1)
    .requiredOption('--out <dir>', 'folder for logs and documents')
    .action(async ({ json, out, ...wish }) =>
      end(await practice({ ...wish, out: at(out) }, progress), json),
    )
  verb('verify <file>', 'check that nothing was taken out or altered').action((file, { json }) =>
    end(verify(at(file)), json),
  )
  verb('rebuild <file>', 'make the tables anew from the entries').action((file, { json }) =>
    end(rebuild(at(file)), json),
  )
  verb('export <file>', 'list what the log holds; no contact is in it')
    .addOption(
      new Option('--what <list>', 'which list').choices(tables.what.options).makeOptionMandatory(),
    )
    .addOption(new Option('--format <format>', 'how').choices(tables.format.options).default('csv'))
    .option('--out <file>', 'a new file instead of stdout')
    .action(async (file, { json, what, format, out }) =>
      end(await exportTable(at(file), { what, format, out: out ? at(out) : null }), json),
    )
  verb('labels <file>', 'PDF of the labels that are good by the log, marked RECORD ONLY')
    .requiredOption('--out <pdf>', 'the new file')
    .action(async (file, { json, out }) => end(await labels(at(file), at(out)), json))
  verb('manifest <file>', 'manifests of the signed handoffs as PDF, JSON and CSV')
    .requiredOption('--out <dir>', 'the folder for them')
    .action(async (file, { json, out }) => end(await manifest(at(file), at(out)), json))
  verb('close <file>', 'the close sheet of the last day, or of another')
    .option('--date <day>', 'a day like 2026-11-14', calendarDay)
    .requiredOption('--out <pdf>', 'the new file')
    .action(async (file, { json, out, date }) => end(await close(at(file), at(out), date), json))
  return program
}
