/** A printing of labels: laid out first, so that a refusal comes before anything is recorded. */
import { type Result, granted, refused } from '../../shared-types/result.ts'
import {
  type LabelFrame,
  type LabelStock,
  labelFrame,
  labelPages,
  labelStocks,
} from './label-stock.ts'
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

export interface LabelRun {
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

function tooSmall({ words, marks }: LabelWish, stock: LabelStock): Result<never> {
  const larger = Object.values(labelStocks).find((each) => marks(labelFrame(each)) !== undefined)
  return refused(
    'label-too-small',
    `The ${words} does not fit ${stock.name}.`,
    larger
      ? `Load ${larger.name} and print again.`
      : 'Shorten the names on it: no label stock here is large enough.',
    'stock',
  )
}

/** Lays the labels out in order. Nothing is shrunk: refuses `label-too-small`, `nothing-to-print`. */
export function laidOut(
  wishes: readonly LabelWish[],
  stock: LabelStock,
  heading: PdfHeading,
): Result<LabelRun> {
  const frame = labelFrame(stock)
  const labels: Mark[][] = []
  for (const wish of wishes) {
    const marks = wish.marks(frame)
    if (!marks) return tooSmall(wish, stock)
    labels.push(...marks)
  }
  if (labels.length === 0)
    return refused('nothing-to-print', 'No label was chosen.', 'Choose what to label.')
  return granted({ pages: labelPages(labels, stock), blanks: labels.length, heading })
}

/** The PDF of a run. */
export function writeLabels({ pages, heading }: LabelRun): Promise<Uint8Array> {
  return writePdf(pages, heading)
}
