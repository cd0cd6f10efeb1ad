/** Going on with a run of labels after a jam, from the exact label. */
import type { ReadableLog } from '../../db/connection.ts'
import { kitRecordOf } from '../../db/read/kits.ts'
import {
  copiesOf,
  type LabelRunRecord,
  labelRunOf,
  type PrintedLabel,
} from '../../db/read/labels.ts'
import type { ParsedInput } from '../../shared-types/desk-api.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import type { KitNumber, SampleNumber } from '../../shared-types/sample-number.ts'
import type { JamView } from '../../shared-types/views/printing.ts'
import { joined, type LabelRun, someOfRun } from '../print/label-run.ts'
import { decideGoOn, type Resumption, type RunPiece, resumption } from '../station/label-resume.ts'
import { scanLabel } from '../station/scan.ts'
import type { Decision } from './call.ts'
import { type KitWanted, kitLabelRun, type Printing } from './label-runs.ts'

interface LaidRun {
  readonly record: LabelRunRecord
  /** The labels that may still come out, laid out; a void one never does. */
  readonly laid: LabelRun
  readonly pieces: readonly (RunPiece & { readonly words: string })[]
}

/** Kit after kit, as they were printed. */
function kitsOf(log: ReadableLog, labels: readonly PrintedLabel[]): KitWanted[] {
  const kits: { kit: KitNumber; animal: KitWanted['animal']; labels: PrintedLabel[] }[] = []
  for (const label of labels) {
    if (label.kit === null) continue
    const open = kits.at(-1)
    if (open?.kit === label.kit) open.labels.push(label)
    else
      kits.push({
        kit: label.kit,
        animal: kitRecordOf(log, label.kit)?.animal ?? null,
        labels: [label],
      })
  }
  return kits
}

function laidRun(log: ReadableLog, printing: Printing, last: SampleNumber | null): Result<LaidRun> {
  const record = labelRunOf(log, last)
  const labels = (record?.labels ?? []).filter(({ kit, fate }) => kit !== null && fate !== 'void')
  if (!record || labels.length === 0)
    return refused(
      'no-run-to-go-on',
      last ? 'That label is not of a run of kits.' : 'No kit labels have been printed here.',
      'Scan the last label that came out good, or print the labels first.',
      'last',
    )
  const laid = kitLabelRun(log, printing, kitsOf(log, labels), record.stock, record.byHand)
  if (!laid.ok) return laid
  const labelOfWish = wishLabels(labels)
  const pieces = laid.value.labels.flatMap(({ wish, words, place, of }) => {
    const label = labelOfWish[wish]
    if (!label) return []
    return {
      number: label.number,
      run: label.run,
      at: label.place,
      words: of === 1 ? words : `${words}, ${place + 1} of ${of}`,
    }
  })
  return granted({ record, laid: laid.value, pieces })
}

/** The label that each wish of the layout is of: a kit's own number is on its outer bag and its card. */
function wishLabels(labels: readonly PrintedLabel[]): PrintedLabel[] {
  return labels.flatMap((label) => (label.number === label.kit ? [label, label] : [label]))
}

const shownAhead = 14

/** The labels from the last good one on, for the person to say which it was. */
export function jamView(
  log: ReadableLog,
  printing: Printing,
  text: string | null,
): Result<JamView> {
  const last = text === null ? granted(null) : scanLabel(log.desk, text)
  if (!last.ok) return last
  const run = laidRun(log, printing, last.value)
  if (!run.ok) return run
  const { pieces } = run.value
  const start = last.value === null ? 0 : pieces.findIndex(({ number }) => number === last.value)
  const ahead = pieces.slice(start)
  return granted({
    last: last.value,
    left: ahead.length,
    total: pieces.length,
    ahead: ahead.slice(0, shownAhead).map(({ number, words }) => ({ number, words })),
  })
}

export interface Resumed {
  readonly run: LabelRun
  /** Numbers that come out as their next copy. */
  readonly again: number
}

/** Decides what goes on, and lays it out: the ruined labels first, then those not printed yet. */
export function resumeRun(
  log: ReadableLog,
  printing: Printing,
  { last: text, good, ruined }: ParsedInput<'labels.goOn'>,
): Result<Decision<Resumed>> {
  const last = text === null ? granted(null) : scanLabel(log.desk, text)
  if (!last.ok) return last
  const found = laidRun(log, printing, last.value)
  if (!found.ok) return found
  const jam = { last: last.value, good, ruined }
  const plan = resumption(found.value.pieces, jam)
  if (!plan.ok) return plan
  const again = plan.value.again.map((number) => ({ number, copies: copiesOf(log, number) }))
  const { stock, labels } = found.value.record
  const next = found.value.pieces[plan.value.rest[0] ?? -1]
  const goesOn = next
    ? { run: next.run, from: next.at }
    : { run: found.value.record.run, from: labels.length }
  const drafts = decideGoOn(jam, again, { ...goesOn, stock, blanks: plan.value.blanks })
  if (!drafts.ok) return drafts
  const run = runAnew(log, printing, found.value, plan.value)
  if (!run.ok) return run
  return granted({ drafts: drafts.value, value: { run: run.value, again: again.length } })
}

/** The reprints, then the rest of the run as it was laid out. */
function runAnew(
  log: ReadableLog,
  printing: Printing,
  { record, laid }: LaidRun,
  { again, rest }: Resumption,
): Result<LabelRun> {
  const toCome = someOfRun(laid, rest)
  if (again.length === 0) return granted(toCome)
  const copies = record.labels
    .filter(({ number }) => again.includes(number))
    .map((label) => ({ ...label, copy: copiesOf(log, label.number).length + 1 }))
  const reprints = kitLabelRun(log, printing, kitsOf(log, copies), record.stock, record.byHand)
  return reprints.ok ? granted(joined(reprints.value, toCome)) : reprints
}
