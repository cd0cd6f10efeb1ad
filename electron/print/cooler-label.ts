/** The label of a cooler: its number, the name people call it by, and how it is kept. */
import type { LabelStock } from '../../shared-types/label-stock.ts'
import type { Result } from '../../shared-types/result.ts'
import { type CoolerNumber, grouped } from '../../shared-types/sample-number.ts'
import { type LabelBatch, type LabelRun, laidOut, labelNotes, stationWords } from './label-run.ts'
import { numberLabelLines, numberLabelMarks } from './number-label.ts'

export interface CoolerLabel {
  readonly cooler: CoolerNumber
  readonly name: string
  /** How it is kept, such as `on ice`. */
  readonly kept: string
  /** Copy 1 is the first print; higher copies say REPRINT. */
  readonly copy: number
}

/** Lays out the label of one cooler. Refuses `label-too-small`. */
export function layCoolerLabel(
  { cooler, name, kept, copy }: CoolerLabel,
  stock: LabelStock,
  batch: LabelBatch,
  stocks?: readonly LabelStock[],
): Result<LabelRun> {
  const label = {
    number: cooler,
    thing: 'cooler' as const,
    notes: labelNotes(copy, batch),
    lines: numberLabelLines(`${name} · ${kept} · ${batch.date}`, batch),
  }
  const words = `label of cooler ${grouped(cooler)}`
  const marks = (frame: Parameters<typeof numberLabelMarks>[1]) => {
    const made = numberLabelMarks(label, frame)
    return made && [made]
  }
  const title = `Cooler ${grouped(cooler)}, ${stationWords(batch)}`
  return laidOut([{ words, marks }], stock, { title, madeAtMs: batch.madeAtMs }, stocks)
}
