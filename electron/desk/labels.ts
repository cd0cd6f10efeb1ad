/** Labels: numbering kits by printing them, going on after a jam, reprints, voids, coolers and badges. */
import type { ReadableLog } from '../../db/connection.ts'
import type { LogTransaction } from '../../db/log/append.ts'
import { copiesOf } from '../../db/read/labels.ts'
import { nextSerial } from '../../db/read/serials.ts'
import { latestDay } from '../../db/read/station.ts'
import type { CallOutput, ParsedInput } from '../../shared-types/desk-api.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import {
  type AnimalNumber,
  grouped,
  type KitNumber,
  kitNumber,
  kitOf,
  lastSerial,
  type SampleNumber,
} from '../../shared-types/sample-number.ts'
import { type LabelRun, writeLabels } from '../print/label-run.ts'
import { checkDayOpen } from '../station/day.ts'
import {
  decideCopy,
  decideReprint,
  decideVoid,
  draftsOfNewKits,
  kitLabelNumbers,
} from '../station/labels.ts'
import { scanLabel } from '../station/scan.ts'
import type { CommandCall, CommandHandlers, Decision, QueryHandlers } from './call.ts'
import { decided, done } from './decided.ts'
import { findAnimal, findCooler, findPerson } from './find.ts'
import { jamView, resumeRun } from './label-resume.ts'
import { badgeRun, coolerLabelRun, kitLabelRun, recordRun, reprintRun } from './label-runs.ts'
import { paperOf, pdfFile } from './pdf.ts'
import { handOver } from './printing.ts'
import { serialsExhausted } from './refusals.ts'

export const labelQueries = {
  labelsOnRecord: async (call) => {
    const { log, station } = call
    const stock = paperOf(station.zone) === 'letter' ? 'sheet-letter' : 'sheet-a4'
    const run = recordRun(log, call, stock)
    if (!run.ok) return run
    return granted(pdfFile(`labels-on-record-${log.desk}.pdf`, await writeLabels(run.value)))
  },
  'labels.jam': (call, { last }) => jamView(call.log, call, last),
} satisfies Partial<QueryHandlers>

type Wanted = ParsedInput<'labels.printKits'>['for']

/** Which kits to number: one for an animal, or so many for whoever comes. */
function kitsWanted(
  log: ReadableLog,
  wanted: Wanted,
): Result<{ kit: KitNumber; animal: AnimalNumber | null }[]> {
  const first = nextSerial(log, 'kit')
  const count = wanted.whom === 'reserve' ? wanted.count : 1
  if (first + count - 1 > lastSerial) return serialsExhausted('kits')
  const numbers = Array.from({ length: count }, (_, place) => kitNumber(log.desk, first + place))
  if (wanted.whom === 'reserve') return granted(numbers.map((kit) => ({ kit, animal: null })))
  const animal = findAnimal(log, wanted.animal)
  if (!animal.ok) return animal
  const { state, animal: number } = animal.value
  if (state !== 'waiting' && state !== 'with-sampler')
    return refused(
      'animal-not-in-line',
      `Animal ${grouped(number)} is not in the line, so it needs no kit.`,
      'Choose an animal that is waiting or with a sampler.',
      'animal',
    )
  return granted(numbers.map((kit) => ({ kit, animal: number })))
}

interface NewKits {
  readonly kits: readonly KitNumber[]
  readonly run: LabelRun
}

/** Laid out before anything is written: labels that do not fit are refused, not recorded. */
function numberKits(
  tx: LogTransaction,
  call: CommandCall,
  { for: wanted, stock }: ParsedInput<'labels.printKits'>,
): Result<Decision<NewKits>> {
  const day = checkDayOpen(latestDay(tx))
  if (!day.ok) return day
  const kits = kitsWanted(tx, wanted)
  if (!kits.ok) return kits
  const { settings } = call.station
  const byHand = wanted.whom === 'reserve' && wanted.byHand
  const labelled = kits.value.map(({ kit, animal }) => ({
    kit,
    animal,
    labels: kitLabelNumbers(kit, settings).map((number) => ({ number, copy: 1 })),
  }))
  const run = kitLabelRun(tx, call, labelled, stock, byHand)
  if (!run.ok) return run
  const drafts = draftsOfNewKits(kits.value, settings, stock, run.value.blanks, byHand)
  return granted({ drafts, value: { kits: kits.value.map(({ kit }) => kit), run: run.value } })
}

async function printKits(
  call: CommandCall,
  input: ParsedInput<'labels.printKits'>,
): Promise<Result<CallOutput<'labels.printKits'>>> {
  const numbered = call.act((tx) => numberKits(tx, call, input))
  if (!numbered.ok) return numbered
  const { kits, run } = numbered.value
  const name = `labels-${kits[0] ?? ''}${kits.length > 1 ? `-to-${kits.at(-1) ?? ''}` : ''}.pdf`
  return granted({ kits: [...kits], ...(await handOver(call, 'kits', run, name)) })
}

async function reprint(
  call: CommandCall,
  { number: text, reason, words, stock, destroyed }: ParsedInput<'label.reprint'>,
): Promise<Result<CallOutput<'label.reprint'>>> {
  const printed = call.act((tx) => {
    const number = scanLabel(tx.desk, text)
    if (!number.ok) return number
    const copies = copiesOf(tx, number.value)
    const run = reprintRun(tx, call, number.value, copies.length + 1, stock)
    if (!run.ok) return run
    const print = { stock, blanks: run.value.blanks }
    const ofKit = kitLabelNumbers(kitOf(number.value), call.station.settings)
    const drafts = decideReprint(number.value, copies, ofKit, { reason, words, destroyed }, print)
    const copy = copies.length + 1
    return decided(drafts, { copy, number: number.value, run: run.value })
  })
  if (!printed.ok) return printed
  const { copy, number, run } = printed.value
  const name = `label-${number}-copy-${copy}.pdf`
  return granted({ copy, ...(await handOver(call, kindOf(number), run, name)) })
}

function kindOf(number: SampleNumber): 'kits' | 'coolers' | 'badges' {
  const part = number.charAt(10)
  return part === 'C' ? 'coolers' : part === 'P' ? 'badges' : 'kits'
}

/** A second label of a cooler or a person is a reprint, and is asked for as one. */
const firstOnly = { reason: 'other', words: '', destroyed: false } as const

/** The first label of a cooler or a badge. */
async function printThing(
  call: CommandCall,
  number: SampleNumber,
  stock: string,
  lay: (log: ReadableLog, copy: number) => Result<LabelRun>,
  name: string,
): Promise<Result<CallOutput<'labels.printCooler'>>> {
  const printed = call.act((tx) => {
    const copies = copiesOf(tx, number)
    const run = lay(tx, copies.length + 1)
    if (!run.ok) return run
    const print = { stock, blanks: run.value.blanks }
    return decided(decideCopy(number, copies, firstOnly, print), run.value)
  })
  if (!printed.ok) return printed
  return granted(await handOver(call, kindOf(number), printed.value, name))
}

/** The rest of a run, begun while its first part still comes out, would come out twice. */
function printerBusy(): Result<never> {
  return refused(
    'printer-busy',
    'Labels are still on their way to the printer.',
    'Stop the printer first (kits screen), then scan the last label that came out good.',
  )
}

async function goOn(
  call: CommandCall,
  jam: ParsedInput<'labels.goOn'>,
): Promise<Result<CallOutput<'labels.goOn'>>> {
  if (call.room.look().job?.state === 'printing') return printerBusy()
  const resumed = call.act((tx) => resumeRun(tx, call, jam))
  if (!resumed.ok) return resumed
  const { run, again } = resumed.value
  const name = `labels-${call.log.desk}-rest.pdf`
  return granted({ labels: run.blanks, again, ...(await handOver(call, 'kits', run, name)) })
}

export const labelCommands = {
  'labels.printKits': printKits,
  'labels.goOn': goOn,
  'label.void': ({ act }, { number: text, reason, words }) =>
    act((tx) => {
      const number = scanLabel(tx.desk, text)
      if (!number.ok) return number
      return done(decideVoid(number.value, copiesOf(tx, number.value), reason, words))
    }),
  'label.reprint': reprint,
  'labels.printCooler': (call, { cooler: text, stock }) => {
    const cooler = findCooler(call.log, text)
    if (!cooler.ok) return cooler
    const number = cooler.value.cooler
    const lay = (log: ReadableLog, copy: number) =>
      coolerLabelRun(log, call, cooler.value, copy, stock)
    return printThing(call, number, stock, lay, `cooler-${number}.pdf`)
  },
  'labels.printBadge': (call, { person: text, stock }) => {
    const person = findPerson(call.log, text)
    if (!person.ok) return person
    const number = person.value.person
    const lay = (log: ReadableLog, copy: number) => badgeRun(log, call, person.value, copy, stock)
    return printThing(call, number, stock, lay, `badge-${number}.pdf`)
  },
} satisfies Partial<CommandHandlers>
