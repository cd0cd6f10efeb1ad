/** The badge of a person of the crew: what signs them in when it is scanned, and their name to wear. */
import type { LabelStock } from '../../shared-types/label-stock.ts'
import type { Result } from '../../shared-types/result.ts'
import { grouped, type PersonId } from '../../shared-types/sample-number.ts'
import { type LabelBatch, type LabelRun, labelNotes, laidOut, stationWords } from './label-run.ts'
import type { LabelFrame } from './label-stock.ts'
import { numberLabelLines, numberLabelMarks } from './number-label.ts'

export interface BadgeLabel {
  readonly person: PersonId
  readonly name: string
  /** Such as `sampler`. */
  readonly role: string
  /** Copy 1 is the first print; higher copies say REPRINT. */
  readonly copy: number
}

/** Lays out the badge of one person. Refuses `label-too-small`. */
export function layBadgeLabel(
  { person, name, role, copy }: BadgeLabel,
  stock: LabelStock,
  batch: LabelBatch,
  stocks?: readonly LabelStock[],
): Result<LabelRun> {
  const label = {
    number: person,
    thing: 'badge' as const,
    notes: labelNotes(copy, batch),
    lines: numberLabelLines({ text: `${name} · ${role}`, face: 'bold' }, batch),
  }
  const words = `badge ${grouped(person)}`
  const marks = (frame: LabelFrame) => {
    const made = numberLabelMarks(label, frame)
    return made && [made]
  }
  const title = `Badge ${grouped(person)}, ${stationWords(batch)}`
  return laidOut([{ words, marks }], stock, { title, madeAtMs: batch.madeAtMs }, stocks)
}
