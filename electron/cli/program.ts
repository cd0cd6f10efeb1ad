/** The verbs of the command line and what each takes. */
import { resolve } from 'node:path'
import { Command, InvalidArgumentError, Option } from 'commander'
import { deskApi } from '../../shared-types/desk-api.ts'
import { GuideFor } from '../../shared-types/help/guides.ts'
import { LocalDate } from '../../shared-types/local-date.ts'
import { deskLetters, SeasonStation } from '../../shared-types/sample-number.ts'
import { addOfficeVerbs } from './office-verbs.ts'
import { addResultVerbs } from './result-verbs.ts'
import type { Outcome } from './outcome.ts'
import type { Progress } from './progress.ts'

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

function seasonStation(text: string): SeasonStation {
  const station = SeasonStation.safeParse(text.toUpperCase())
  if (station.success) return station.data
  throw new InvalidArgumentError('A season and station like 26KRV is wanted.')
}

/** Verbs are loaded when they are called: whoever mistypes one is told at once. */
const load = {
  practice: () => import('./verbs/practice.ts'),
  verify: () => import('./verbs/verify.ts'),
  drill: () => import('./verbs/drill.ts'),
  rebuild: () => import('./verbs/rebuild.ts'),
  export: () => import('./verbs/export.ts'),
  close: () => import('./verbs/close.ts'),
  guide: () => import('./verbs/guide.ts'),
  papers: () => import('./verbs/papers.ts'),
  checkManifest: () => import('./verbs/check-manifest.ts'),
}

/** Builds the program. It throws commander's own error for a wrong call, having said what is wrong. */
export function createProgram(deps: ProgramDeps): Command {
  const program = new Command('duskline')
    .description('A station log from the terminal. Reading verbs leave the file as it is.')
    .exitOverride()
    .showHelpAfterError('Add --help to see what is wanted.')
  const add: AddVerb = (usage, description) =>
    program.command(usage).description(description).option('--json', 'answer as JSON on stdout')
  addPractice(add, deps)
  addChecks(add, deps)
  addExport(add, deps)
  addPapers(add, deps)
  addOfficeVerbs(add, deps)
  addResultVerbs(add, deps)
  return program
}

/** Each verb ends with an outcome, told in words or, with `--json`, as one JSON value. */
export type AddVerb = (usage: string, description: string) => Command

function addPractice(add: AddVerb, { cwd, progress, end }: ProgramDeps): void {
  add('practice', 'play an invented opening day into an empty folder')
    .option('--animals <count>', 'animals of the whole station', wholeNumber(1, 5000), 120)
    .option('--desks <count>', 'desks that share them', wholeNumber(1, deskLetters.length), 1)
    .option('--seed <number>', 'the same seed, the same day', wholeNumber(0, 2 ** 32 - 1), 1)
    .requiredOption('--out <dir>', 'folder for logs and documents')
    .action(async ({ json, out, ...wish }) => {
      const { practice } = await load.practice()
      end(await practice({ ...wish, out: resolve(cwd, out) }, progress), json)
    })
}

function addChecks(add: AddVerb, { cwd, end }: ProgramDeps): void {
  add('verify <file>', 'check that nothing was taken out or altered').action(
    async (file, { json }) => {
      const { verify } = await load.verify()
      end(verify(resolve(cwd, file)), json)
    },
  )
  add('check-manifest <file> <log>', 'whether a manifest (PDF or JSON) and a log agree').action(
    async (file, log, { json }) => {
      const { checkManifest } = await load.checkManifest()
      end(await checkManifest(resolve(cwd, file), resolve(cwd, log)), json)
    },
  )
  add('drill <backup> [log]', 'restore a backup for a try, and check it').action(
    async (backup, log, { json }) => {
      const { drill } = await load.drill()
      end(drill(resolve(cwd, backup), log && resolve(cwd, log)), json)
    },
  )
  add('rebuild <file>', 'make the tables anew from the entries').action(async (file, { json }) => {
    const { rebuild } = await load.rebuild()
    end(rebuild(resolve(cwd, file)), json)
  })
}

function addExport(add: AddVerb, { cwd, end }: ProgramDeps): void {
  const { what: lists, format: formats } = deskApi.table.input.shape
  const what = new Option('--what <list>', 'which list').choices(lists.options)
  const format = new Option('--format <format>', 'how').choices(formats.options).default('csv')
  add('export <file>', 'list what the log holds; no contact or hunter is in it')
    .addOption(what.makeOptionMandatory())
    .addOption(format)
    .option('--hunters', 'with the numbers of hunters and their tags', false)
    .option('--out <file>', 'a new file instead of stdout')
    .action(async (file, { json, out, ...wish }) => {
      const { exportTable } = await load.export()
      const to = out ? resolve(cwd, out) : null
      end(await exportTable(resolve(cwd, file), { ...wish, out: to }), json)
    })
}

function addPapers(add: AddVerb, { cwd, end }: ProgramDeps): void {
  const at = (path: string) => resolve(cwd, path)
  add('labels <file>', 'PDF of the labels that are good by the log, marked RECORD ONLY')
    .requiredOption('--out <pdf>', 'the new file')
    .action(async (file, { json, out }) => {
      const { labels } = await load.papers()
      end(await labels(at(file), at(out)), json)
    })
  add('manifest <file>', 'manifests of the signed handoffs as PDF, JSON and CSV')
    .requiredOption('--out <dir>', 'the folder for them')
    .action(async (file, { json, out }) => {
      const { manifest } = await load.papers()
      end(await manifest(at(file), at(out)), json)
    })
  const roles = new Option('--role <role>', 'whose').choices(GuideFor.options)
  add('guide', 'the one-page guide of a role, to print')
    .addOption(roles.makeOptionMandatory())
    .requiredOption('--out <pdf>', 'the new file')
    .action(async ({ json, role, out }) => {
      const { guide } = await load.guide()
      end(await guide(role, at(out)), json)
    })
  add('close <file>', "the close sheet of the last day; of a merged log, the station's close")
    .option('--date <day>', 'a day like 2026-11-14', calendarDay)
    .option('--station <code>', 'of a merged log: which station, like 26KRV', seasonStation)
    .requiredOption('--out <pdf>', 'the new file')
    .action(async (file, { json, out, date, station }) => {
      const { close } = await load.close()
      end(await close(at(file), at(out), { date, station }), json)
    })
}
