/** Kits and labels: the ledger, numbering by printing, reprints, voids. */
import type { ReadableLog } from '../../db/connection.ts'
import { kitBalance, kitBalances, latestKits, reservedKits } from '../../db/read/kits.ts'
import { copiesOf, labelsOfKit } from '../../db/read/labels.ts'
import { people } from '../../db/read/people.ts'
import { nextSerial } from '../../db/read/serials.ts'
import { latestDay } from '../../db/read/station.ts'
import type { ParsedInput } from '../../shared-types/desk-api.ts'
import { type KitAccount, kitAccountKey, type KitRecord } from '../../shared-types/kit.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import {
  type AnimalNumber,
  grouped,
  type KitNumber,
  kitNumber,
  kitOf,
  lastSerial,
} from '../../shared-types/sample-number.ts'
import type { AccountBalance, NumberedKit } from '../../shared-types/views/kits.ts'
import { writeLabels } from '../print/label-run.ts'
import { checkDayOpen } from '../station/day.ts'
import { accountWords, decideMoveKits, decideSpoilKit } from '../station/kit-ledger.ts'
import {
  decideReprint,
  decideVoid,
  draftsOfCopy,
  draftsOfNewKits,
  kitLabelNumbers,
} from '../station/labels.ts'
import { scanLabel } from '../station/scan.ts'
import type { CommandCall, CommandHandlers, QueryHandlers } from './call.ts'
import { decided, done } from './decided.ts'
import { findAnimal, findCooler, findKit, findPerson } from './find.ts'
import { coolerLabelRun, kitLabelRun, recordRun, reprintRun } from './label-runs.ts'
import { labelsLeft } from './labels-left.ts'
import { namesOf } from './names.ts'
import { paperOf, pdfFile } from './pdf.ts'
import { serialsExhausted } from './refusals.ts'

function accounts(log: ReadableLog): KitAccount[] {
  const balances = kitBalances(log)
  const hands = people(log)
    .filter(
      ({ person, active, role }) =>
        (active && role !== 'office') ||
        (balances.get(kitAccountKey({ in: 'hands', person })) ?? 0) !== 0,
    )
    .map(({ person }) => ({ in: 'hands', person }) as const)
  return [
    { in: 'stock' },
    ...hands,
    { in: 'used' },
    { in: 'sent' },
    { in: 'spoiled' },
    { in: 'missing' },
    { in: 'delivered' },
  ]
}

/** The ledger's balances. `delivered` is shown as the number of kits that ever came. */
function balancesOf(log: ReadableLog): AccountBalance[] {
  const nameOf = namesOf(log)
  const balances = kitBalances(log)
  return accounts(log).map((account) => {
    const key = kitAccountKey(account)
    const count = balances.get(key) ?? 0
    return {
      key,
      account,
      words: accountWords(account, nameOf),
      count: account.in === 'delivered' ? 0 - count : count,
    }
  })
}

function numberedKit(log: ReadableLog, kit: KitRecord): NumberedKit {
  return {
    kit: kit.kit,
    animal: kit.animal,
    state: kit.state,
    printedMs: kit.numberedMs,
    labels: labelsOfKit(log, kit.kit),
  }
}

export const kitQueries = {
  kits: ({ log }) =>
    granted({
      balances: balancesOf(log),
      reserved: reservedKits(log).map((kit) => numberedKit(log, kit)),
      latest: latestKits(log).map((kit) => numberedKit(log, kit)),
      labels: labelsLeft(log),
    }),
  labelsOnRecord: async (call) => {
    const { log, station } = call
    const stock = paperOf(station.zone) === 'letter' ? 'sheet-letter' : 'sheet-a4'
    const run = recordRun(log, call, stock)
    if (!run.ok) return run
    return granted(pdfFile(`labels-on-record-${log.desk}.pdf`, await writeLabels(run.value)))
  },
} satisfies Partial<QueryHandlers>

/** Which kits to number: one for an animal, or so many for whoever comes. */
function kitsWanted(
  log: ReadableLog,
  wanted: ParsedInput<'labels.printKits'>['for'],
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

async function printKits(
  call: CommandCall,
  { for: wanted, stock }: ParsedInput<'labels.printKits'>,
): Promise<Result<{ kits: KitNumber[]; pdf: ReturnType<typeof pdfFile> }>> {
  const printed = call.act((tx) => {
    const day = checkDayOpen(latestDay(tx))
    if (!day.ok) return day
    const kits = kitsWanted(tx, wanted)
    if (!kits.ok) return kits
    // Laid out before anything is written: labels that do not fit are refused, not recorded.
    const run = kitLabelRun(tx, call, kits.value, stock)
    if (!run.ok) return run
    const drafts = draftsOfNewKits(kits.value, call.station.settings, stock, run.value.blanks)
    return granted({ drafts, value: { kits: kits.value.map(({ kit }) => kit), run: run.value } })
  })
  if (!printed.ok) return printed
  const { kits, run } = printed.value
  const name = `labels-${kits[0] ?? ''}${kits.length > 1 ? `-to-${kits.at(-1) ?? ''}` : ''}.pdf`
  return granted({ kits, pdf: pdfFile(name, await writeLabels(run)) })
}

/** Hands must be those of someone here: else kits would leave the ledger unseen. */
function knownHands(
  log: ReadableLog,
  { from, to }: { from: KitAccount; to: KitAccount },
): Result<null> {
  for (const account of [from, to]) {
    const person = account.in === 'hands' ? findPerson(log, account.person) : granted(null)
    if (!person.ok) return person
  }
  return granted(null)
}

export const kitCommands = {
  'kits.move': ({ act, by }, move) =>
    act((tx) => {
      const known = knownHands(tx, move)
      if (!known.ok) return known
      const balance = kitBalance(tx, kitAccountKey(move.from))
      return done(decideMoveKits({ by, balance, nameOf: namesOf(tx) }, move))
    }),
  'kit.spoil': ({ act }, { kit: text, reason }) =>
    act((tx) => {
      const kit = findKit(tx, text)
      if (!kit.ok) return kit
      const labels = labelsOfKit(tx, kit.value.kit)
      return done(decideSpoilKit(kit.value, kitBalance(tx, 'stock'), labels, reason))
    }),
  'labels.printKits': printKits,
  'label.void': ({ act }, { number: text, reason, words }) =>
    act((tx) => {
      const number = scanLabel(tx.desk, text)
      if (!number.ok) return number
      return done(decideVoid(number.value, copiesOf(tx, number.value), reason, words))
    }),
  'label.reprint': async (call, { number: text, reason, words, stock }) => {
    const printed = call.act((tx) => {
      const number = scanLabel(tx.desk, text)
      if (!number.ok) return number
      const copies = copiesOf(tx, number.value)
      const run = reprintRun(tx, call, number.value, copies.length + 1, stock)
      if (!run.ok) return run
      const print = { stock, blanks: run.value.blanks }
      const ofKit = kitLabelNumbers(kitOf(number.value), call.station.settings)
      return decided(decideReprint(number.value, copies, ofKit, { reason, words }, print), {
        copy: copies.length + 1,
        number: number.value,
        run: run.value,
      })
    })
    if (!printed.ok) return printed
    const { copy, number, run } = printed.value
    const pdf = pdfFile(`label-${number}-copy-${copy}.pdf`, await writeLabels(run))
    return granted({ copy, pdf })
  },
  'labels.printCooler': async (call, { cooler: text, stock }) => {
    const printed = call.act((tx) => {
      const cooler = findCooler(tx, text)
      if (!cooler.ok) return cooler
      const number = cooler.value.cooler
      const copies = copiesOf(tx, number)
      const run = coolerLabelRun(call, cooler.value, copies.length + 1, stock)
      if (!run.ok) return run
      const print = { stock, blanks: run.value.blanks }
      const why = { reason: 'other', words: 'printed again' } as const
      const drafts = draftsOfCopy(number, copies, why, print)
      return granted({ drafts, value: { number, run: run.value } })
    })
    if (!printed.ok) return printed
    const { number, run } = printed.value
    return granted({ pdf: pdfFile(`cooler-${number}.pdf`, await writeLabels(run)) })
  },
} satisfies Partial<CommandHandlers>
