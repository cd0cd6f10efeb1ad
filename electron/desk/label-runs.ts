/** From what the log knows to what the printer needs: labels of kits, reprints, coolers. */
import type { ReadableLog } from '../../db/connection.ts'
import { bagOf } from '../../db/read/bags.ts'
import { coolerOf } from '../../db/read/coolers.ts'
import { allKits, kitRecordOf } from '../../db/read/kits.ts'
import { labelsOfKit } from '../../db/read/labels.ts'
import { personOf } from '../../db/read/people.ts'
import { allStocks } from '../../db/read/stocks.ts'
import type { CoolerRecord } from '../../shared-types/cooler.ts'
import type { LabelRecord } from '../../shared-types/label.ts'
import type { LabelStock, StockName } from '../../shared-types/label-stock.ts'
import type { PersonRecord } from '../../shared-types/person.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import {
  type AnimalNumber,
  BagNumber,
  CoolerNumber,
  grouped,
  type KitNumber,
  kitOf,
  PersonId,
  type SampleNumber,
} from '../../shared-types/sample-number.ts'
import { keepingWords, type StationRecord } from '../../shared-types/station.ts'
import type { Kept, TissueSite } from '../../shared-types/tissue.ts'
import { layBadgeLabel } from '../print/badge-label.ts'
import { layCoolerLabel } from '../print/cooler-label.ts'
import { type KitLabel, type KitLabels, layKitLabels } from '../print/kit-labels.ts'
import type { LabelBatch, LabelRun } from '../print/label-run.ts'
import { localDate } from '../station/local-time.ts'
import { unknownStock } from '../station/label-stocks.ts'
import { partOf } from '../station/scan.ts'
import { factsOf, keptBySite } from './label-facts.ts'

export interface Printing {
  readonly station: StationRecord
  readonly now: number
}

/** The stock to print on, and those that are there besides, if it is too small. */
interface Stocks {
  readonly stock: LabelStock
  readonly inUse: readonly LabelStock[]
}

function stocksFor(log: ReadableLog, name: StockName): Result<Stocks> {
  const all = allStocks(log)
  const stock = all.find((each) => each.name === name)?.stock
  if (!stock) return unknownStock(name)
  const inUse = all.filter(({ retired }) => !retired).map((each) => each.stock)
  return granted({ stock, inUse })
}

function batchOf({ station, now }: Printing): LabelBatch {
  return {
    station: station.name,
    date: localDate(now, station.zone),
    practice: station.practice,
    madeAtMs: now,
  }
}

/** A kit and which of its numbers to label, each at its copy. */
export interface KitWanted {
  readonly kit: KitNumber
  readonly animal: AnimalNumber | null
  readonly labels: readonly { readonly number: SampleNumber; readonly copy: number }[]
}

/** The labels of kits, kit after kit. Refuses when they do not fit the stock. */
export function kitLabelRun(
  log: ReadableLog,
  printing: Printing,
  kits: readonly KitWanted[],
  stock: StockName,
  byHand = false,
): Result<LabelRun> {
  const stocks = stocksFor(log, stock)
  if (!stocks.ok) return stocks
  return layKits(log, printing, kits, stocks.value, byHand)
}

/** One kit on a stock that need not be in the table. */
export function layReserved(
  call: Printing & { readonly log: ReadableLog },
  kits: readonly KitWanted[],
  stock: LabelStock,
  inUse: readonly LabelStock[],
): Result<LabelRun> {
  return layKits(call.log, call, kits, { stock, inUse }, false)
}

function layKits(
  log: ReadableLog,
  printing: Printing,
  kits: readonly KitWanted[],
  { stock, inUse }: Stocks,
  byHand: boolean,
): Result<LabelRun> {
  const { settings } = printing.station
  const wanted = kits.map(
    ({ kit, animal, labels }): KitLabels => ({
      kit,
      labels: labels.flatMap(({ number, copy }) =>
        labelsOfNumber(number).map((label) => ({ label, copy })),
      ),
      kept: keptBySite(settings),
      facts: factsOf(log, animal, settings),
      byHand,
    }),
  )
  const batch = { ...batchOf(printing), askAt: settings.askForResult }
  return layKitLabels(wanted, stock, batch, inUse)
}

/** What carries a number: the kit's own is on its outer bag and on its data card. */
const labelsOfPart: Partial<Record<string, readonly KitLabel[]>> = {
  L: ['left'],
  R: ['right'],
  X: ['obex'],
  K: ['kit', 'card'],
  H: ['stub'],
}

function labelsOfNumber(number: SampleNumber): readonly KitLabel[] {
  return labelsOfPart[partOf(number)] ?? []
}

/** In the order in which they are used. */
const labelOrder: readonly KitLabel[] = ['left', 'right', 'obex', 'kit', 'card', 'stub']

/** One label once more. Refuses a number that no kit or cooler of this log has. */
export function reprintRun(
  log: ReadableLog,
  printing: Printing,
  number: SampleNumber,
  copy: number,
  stock: StockName,
): Result<LabelRun> {
  const labels = labelsOfNumber(number)
  const [label] = labels
  if (!label) return reprintOfThing(log, printing, number, copy, stock)
  const stocks = stocksFor(log, stock)
  if (!stocks.ok) return stocks
  const kit = kitRecordOf(log, kitOf(number))
  if (!kit) return unknownNumber(number)
  const { settings } = printing.station
  const bag =
    label === 'left' || label === 'right' || label === 'obex' ? bagKept(log, number, label) : {}
  const wanted = {
    kit: kit.kit,
    labels: labels.map((each) => ({ label: each, copy })),
    kept: { ...keptBySite(settings), ...bag },
    facts: factsOf(log, kit.animal, settings),
  }
  const batch = { ...batchOf(printing), askAt: settings.askForResult }
  return layKitLabels([wanted], stocks.value.stock, batch, stocks.value.inUse)
}

/** Coolers and badges once more. */
function reprintOfThing(
  log: ReadableLog,
  printing: Printing,
  number: SampleNumber,
  copy: number,
  stock: StockName,
): Result<LabelRun> {
  if (partOf(number) === 'P') {
    const person = personOf(log, PersonId.parse(number))
    return person ? badgeRun(log, printing, person, copy, stock) : unknownNumber(number)
  }
  const cooler = coolerOf(log, CoolerNumber.parse(number))
  return cooler ? coolerLabelRun(log, printing, cooler, copy, stock) : unknownNumber(number)
}

/**
 * Every kit label that is good by the log, each at its latest copy, marked as being for the record only:
 * nothing is printed anew, so no entry is made. Refuses `no-good-labels`.
 */
export function recordRun(
  log: ReadableLog,
  printing: Printing,
  stock: StockName,
): Result<LabelRun> {
  const stocks = stocksFor(log, stock)
  if (!stocks.ok) return stocks
  const { settings } = printing.station
  const wanted = allKits(log).flatMap(({ kit, animal }): KitLabels[] => {
    const good = labelsOfKit(log, kit).filter(({ fate }) => fate !== 'void')
    if (good.length === 0) return []
    const kept = { ...keptBySite(settings), ...keptInBags(log, good) }
    const labels = labelOrder.flatMap((label) =>
      good
        .filter(({ number }) => labelsOfNumber(number).includes(label))
        .map(({ copy }) => ({ label, copy })),
    )
    return [{ kit, labels, kept, facts: factsOf(log, animal, settings) }]
  })
  if (wanted.length === 0)
    return refused(
      'no-good-labels',
      'This log holds no label that is good.',
      'Print labels at the desk first (kits screen).',
    )
  const batch = { ...batchOf(printing), askAt: settings.askForResult, forTheRecord: true }
  return layKitLabels(wanted, stocks.value.stock, batch, stocks.value.inUse)
}

function keptInBags(
  log: ReadableLog,
  labels: readonly LabelRecord[],
): Partial<Record<TissueSite, Kept>> {
  const bags = labels.flatMap(({ number }) => {
    const bag = BagNumber.safeParse(number)
    const record = bag.success ? bagOf(log, bag.data) : null
    return record ? [[record.site, record.kept] as const] : []
  })
  return Object.fromEntries(bags)
}

/** A bag that is sealed says how it is kept, whatever the settings say by now. */
function bagKept(
  log: ReadableLog,
  number: SampleNumber,
  site: TissueSite,
): Partial<Record<TissueSite, Kept>> {
  const bag = bagOf(log, number as never)
  return bag ? { [site]: bag.kept } : {}
}

function unknownNumber(number: SampleNumber): Result<never> {
  return refused(
    'label-never-printed',
    `No label ${grouped(number)} was printed here.`,
    'Check the number, or print the labels of its kit first.',
    'number',
  )
}

/** The badge of a person of the crew. */
export function badgeRun(
  log: ReadableLog,
  printing: Printing,
  { person, name, role }: PersonRecord,
  copy: number,
  stock: StockName,
): Result<LabelRun> {
  const stocks = stocksFor(log, stock)
  if (!stocks.ok) return stocks
  const label = { person, name, role, copy }
  return layBadgeLabel(label, stocks.value.stock, batchOf(printing), stocks.value.inUse)
}

/** The label of a cooler. */
export function coolerLabelRun(
  log: ReadableLog,
  printing: Printing,
  cooler: CoolerRecord,
  copy: number,
  stock: StockName,
): Result<LabelRun> {
  const stocks = stocksFor(log, stock)
  if (!stocks.ok) return stocks
  const { cooler: number, name, keeping } = cooler
  return layCoolerLabel(
    { cooler: number, name, kept: keepingWords[keeping], copy },
    stocks.value.stock,
    batchOf(printing),
    stocks.value.inUse,
  )
}
