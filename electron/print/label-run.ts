/** A printing of labels: laid out first, so that a refusal comes before anything is recorded. */
import { commonStocks } from '../../shared-types/common-stocks.ts'
import { type LabelStock, stockWords } from '../../shared-types/label-stock.ts'
import { type Result, granted, refused } from '../../shared-types/result.ts'
import { type LabelFrame, labelFrame, labelPages } from './label-stock.ts'
import type { Mark, Page } from './mark.ts'
import { type PdfHeading, writePdf } from './pdf-writer.ts'

/** What all labels of one printing share, as words ready to print. */
export interface LabelBatch {
  readonly station: string
  readonly date: string
  /** Labels of a practice day say so. */
  readonly practice: boolean
  /** When the document is made, UTC milliseconds. */
  readonly madeAtMs: number
  /** Not to be stuck on anything: it shows which labels are good by the log. */
  readonly forTheRecord?: boolean
}

/** One thing to label: it may need several labels of the stock, or not fit at all (undefined). */
export interface LabelWish {
  /** As a refusal names it, such as `left bag label of kit 26-KRV-A0042-K-9`. */
  readonly words: string
  readonly marks: (frame: LabelFrame) => Mark[][] | undefined
}

/** One label of the stock: which wish it belongs to, and its place among the labels of that wish. */
export interface RunLabel {
  readonly wish: number
  readonly words: string
  readonly place: number
  readonly of: number
  readonly marks: readonly Mark[]
}

export interface LabelRun {
  readonly stock: LabelStock
  /** In the order in which they come out. */
  readonly labels: readonly RunLabel[]
  readonly pages: readonly Page[]
  /** Blank labels of the stock that the run uses up. */
  readonly blanks: number
  readonly heading: PdfHeading
}

/** Copy 1 is the first print; copy 2 is the first reprint. */
export function labelNotes(copy: number, { forTheRecord }: LabelBatch): string[] {
  return [...(forTheRecord ? ['RECORD ONLY'] : []), ...(copy > 1 ? [`REPRINT ${copy - 1}`] : [])]
}

/** The station's name, marked where it is only practice. */
export function stationWords({ station, practice }: LabelBatch): string {
  return practice ? `PRACTICE · ${station}` : station
}

/** The smallest label that would do. */
function larger(
  { marks }: LabelWish,
  stocks: readonly LabelStock[],
  { dpi }: LabelStock,
): LabelStock | undefined {
  const area = ({ widthMm, heightMm }: LabelStock) => widthMm * heightMm
  const sameDots = (stock: LabelStock) => (stock.dpi === dpi ? 0 : 1)
  return stocks
    .toSorted((a, b) => sameDots(a) - sameDots(b) || area(a) - area(b))
    .find((each) => marks(labelFrame(each)) !== undefined)
}

function tooSmall(
  wish: LabelWish,
  stock: LabelStock,
  stocks: readonly LabelStock[],
): Result<never> {
  const would = larger(wish, stocks, stock)
  return refused(
    'label-too-small',
    `The ${wish.words} does not fit ${stockWords(stock)}.`,
    would
      ? `Load ${stockWords(would)} and print again.`
      : 'Shorten the names on it: no label stock here is large enough.',
    'stock',
  )
}

/**
 * Lays the labels out in order. Nothing is shrunk: refuses `label-too-small`, naming which of
 * `stocks` would do, and `nothing-to-print`.
 */
export function laidOut(
  wishes: readonly LabelWish[],
  stock: LabelStock,
  heading: PdfHeading,
  stocks: readonly LabelStock[] = Object.values(commonStocks),
): Result<LabelRun> {
  const frame = labelFrame(stock)
  const labels: RunLabel[] = []
  for (const [wish, each] of wishes.entries()) {
    const strip = each.marks(frame)
    if (!strip) return tooSmall(each, stock, stocks)
    for (const [place, marks] of strip.entries())
      labels.push({ wish, words: each.words, place, of: strip.length, marks })
  }
  if (labels.length === 0)
    return refused('nothing-to-print', 'No label was chosen.', 'Choose what to label.')
  return granted(runOf(labels, stock, heading))
}

function runOf(labels: readonly RunLabel[], stock: LabelStock, heading: PdfHeading): LabelRun {
  const pages = labelPages(
    labels.map(({ marks }) => marks),
    stock,
  )
  return { stock, labels, pages, blanks: labels.length, heading }
}

/** Some labels of a run, by their places in it; a sheet begins anew with the first. */
export function someOfRun(
  { labels, stock, heading }: LabelRun,
  places: readonly number[],
): LabelRun {
  const chosen = places.flatMap((place) => labels[place] ?? [])
  return runOf(chosen, stock, heading)
}

/** One run after another, on one stock. */
export function joined(first: LabelRun, second: LabelRun): LabelRun {
  return runOf([...first.labels, ...second.labels], first.stock, first.heading)
}

/** The PDF of a run. */
export function writeLabels({ pages, heading }: LabelRun): Promise<Uint8Array> {
  return writePdf(pages, heading)
}
