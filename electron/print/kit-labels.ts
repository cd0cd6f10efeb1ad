/**
 * Labels of kits: one for each inner bag, one for the outer bag, the data card, the hunter's stub. They
 * come out in the order in which they are used; the strip of a card or a stub takes as many labels as it needs.
 */
import type { LabelStock } from '../../shared-types/label-stock.ts'
import { type Result, granted } from '../../shared-types/result.ts'
import {
  type KitNumber,
  bagNumber,
  grouped,
  numberParts,
  sampleNumber,
} from '../../shared-types/sample-number.ts'
import { type Kept, type TissueSite, sitePart } from '../../shared-types/tissue.ts'
import { type DataCardFacts, dataCardMarks } from './data-card.ts'
import { hunterStubMarks } from './hunter-stub.ts'
import {
  type LabelBatch,
  type LabelRun,
  type LabelWish,
  labelNotes,
  laidOut,
  stationWords,
  writeLabels,
} from './label-run.ts'
import type { LabelFrame } from './label-stock.ts'
import type { Mark } from './mark.ts'
import { numberLabelLines, numberLabelMarks } from './number-label.ts'

/** `kit` is for the outer bag; it and the data card carry the kit's own number. */
export type KitLabel = TissueSite | 'kit' | 'card' | 'stub'

/** One kit and which of its labels to print: all of them at first, a torn one later. */
export interface KitLabels {
  readonly kit: KitNumber
  /** Copy 1 is the first print of that label's number; higher copies say REPRINT. */
  readonly labels: readonly { readonly label: KitLabel; readonly copy: number }[]
  readonly kept?: Partial<Record<TissueSite, Kept>>
  /** What is known of the animal; empty while the kit is only reserved. */
  readonly facts: DataCardFacts
  /** Species and date are left to be written by hand. */
  readonly byHand?: boolean
}

export interface KitLabelBatch extends LabelBatch {
  /** When and where a hunter asks for the result, one sentence. */
  readonly askAt: string
}

const labelWords: Record<KitLabel, string> = {
  left: 'left bag label',
  right: 'right bag label',
  obex: 'obex bag label',
  kit: 'outer bag label',
  card: 'data card',
  stub: "hunter's stub",
}

const keptNotes: Record<Kept, string> = { fresh: 'FRESH', formalin: 'FORMALIN' }

function bagMarks(
  site: TissueSite,
  copy: number,
  { kit, kept, facts, byHand }: KitLabels,
  batch: KitLabelBatch,
  frame: LabelFrame,
): Mark[][] | undefined {
  const { desk, serial } = numberParts(kit)
  const way = kept?.[site]
  const marks = numberLabelMarks(
    {
      number: bagNumber(desk, serial, sitePart[site]),
      thing: site,
      notes: [...(way ? [keptNotes[way]] : []), ...labelNotes(copy, batch)],
      lines: numberLabelLines(byHand ? toWrite : whatAndWhen(facts, batch), batch),
    },
    frame,
  )
  return marks && [marks]
}

const toWrite = { write: ['Species', 'Date'] }

function whatAndWhen({ species }: DataCardFacts, { date }: LabelBatch): string {
  return [species, date].filter(Boolean).join(' · ')
}

function outerMarks(
  copy: number,
  { kit, facts, byHand }: KitLabels,
  batch: KitLabelBatch,
  frame: LabelFrame,
): Mark[][] | undefined {
  const marks = numberLabelMarks(
    {
      number: kit,
      thing: 'kit',
      notes: labelNotes(copy, batch),
      lines: numberLabelLines(byHand ? toWrite : whatAndWhen(facts, batch), batch),
    },
    frame,
  )
  return marks && [marks]
}

function stubMarks(
  copy: number,
  { kit, facts }: KitLabels,
  batch: KitLabelBatch,
  frame: LabelFrame,
): Mark[][] | undefined {
  const { desk, serial } = numberParts(kit)
  const askWith =
    facts.animal === undefined
      ? { kind: 'kit' as const, number: kit }
      : { kind: 'animal' as const, number: facts.animal }
  const number = sampleNumber(desk, serial, 'H')
  return hunterStubMarks({ number, copy, askWith, ...batch }, frame)
}

function wishFor(label: KitLabel, copy: number, kit: KitLabels, batch: KitLabelBatch): LabelWish {
  return {
    words: `${labelWords[label]} of kit ${grouped(kit.kit)}`,
    marks: (frame) => {
      if (label === 'card')
        return dataCardMarks({ kit: kit.kit, copy, facts: kit.facts }, batch, frame)
      if (label === 'kit') return outerMarks(copy, kit, batch, frame)
      if (label === 'stub') return stubMarks(copy, kit, batch, frame)
      return bagMarks(label, copy, kit, batch, frame)
    },
  }
}

/**
 * Lays out the labels of the kits, in order. Refuses `label-too-small`, naming which of `stocks` would
 * do, and `nothing-to-print`.
 */
export function layKitLabels(
  kits: readonly KitLabels[],
  stock: LabelStock,
  batch: KitLabelBatch,
  stocks?: readonly LabelStock[],
): Result<LabelRun> {
  const wishes = kits.flatMap((kit) =>
    kit.labels.map(({ label, copy }) => wishFor(label, copy, kit, batch)),
  )
  const title = `Kit labels, ${stationWords(batch)}, ${batch.date}`
  return laidOut(wishes, stock, { title, madeAtMs: batch.madeAtMs }, stocks)
}

/** The PDF of `layKitLabels`, with the same refusals. */
export async function printKitLabels(
  kits: readonly KitLabels[],
  stock: LabelStock,
  batch: KitLabelBatch,
): Promise<Result<Uint8Array>> {
  const run = layKitLabels(kits, stock, batch)
  return run.ok ? granted(await writeLabels(run.value)) : run
}
