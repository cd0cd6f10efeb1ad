/** Going on after a jam, from the exact label: which come out again, and which come out for the first time. */
import { draft, type EntryDraft } from '../../shared-types/entry.ts'
import type { LabelCopy, LabelRecord } from '../../shared-types/label.ts'
import type { StockName } from '../../shared-types/label-stock.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import { grouped, type SampleNumber } from '../../shared-types/sample-number.ts'

/** One label of a run as it comes out: a number may need several, such as a data card. */
export interface RunPiece {
  readonly number: SampleNumber
  /** The run that its number was printed in, and the place of the number there. */
  readonly run: string
  readonly at: number
}

/** What the person at the printer saw. */
export interface Jam {
  /** The last number of which a label came out good; null if none did. */
  readonly last: SampleNumber | null
  /** How many labels came out good from the first one of that number on. */
  readonly good: number
  /** How many came out after them torn, smeared or stuck together. */
  readonly ruined: number
}

export interface Resumption {
  /** Numbers of which a label is ruined: all their labels are printed once more, as the next copy. */
  readonly again: readonly SampleNumber[]
  /** Blanks that these take beside those that the run has taken already. */
  readonly blanks: number
  /** Places of the pieces that come out for the first time. */
  readonly rest: readonly number[]
}

/** Works out what is left of a run. Refuses `not-in-this-run`, `jam-beyond-run`, `run-is-out`. */
export function resumption(pieces: readonly RunPiece[], jam: Jam): Result<Resumption> {
  const start = jam.last === null ? 0 : pieces.findIndex(({ number }) => number === jam.last)
  if (start < 0) return notInRun()
  const stopped = start + jam.good + jam.ruined
  if (stopped > pieces.length) return beyondRun(pieces.length - start)
  if (stopped === pieces.length && jam.ruined === 0) return runIsOut()
  const spoiled = pieces.slice(start + jam.good, stopped)
  const again = [...new Set(spoiled.map(({ number }) => number))]
  const isAgain = ({ number }: RunPiece) => again.includes(number)
  const toCome = pieces.slice(stopped).filter(isAgain).length
  return granted({
    again,
    blanks: pieces.filter(isAgain).length - toCome,
    rest: pieces.flatMap((piece, place) => (place < stopped || isAgain(piece) ? [] : [place])),
  })
}

function notInRun(): Result<never> {
  return refused(
    'not-in-this-run',
    'That label is not of a run that can go on.',
    'Scan the last label that came out good.',
    'last',
  )
}

function beyondRun(left: number): Result<never> {
  return refused(
    'jam-beyond-run',
    `The run has only ${left} labels from that one on.`,
    'Count the good and the ruined labels again.',
    'ruined',
  )
}

function runIsOut(): Result<never> {
  return refused(
    'run-is-out',
    'That was the last label of the run: nothing is left to print.',
    'Reprint single labels where one is bad.',
    'last',
  )
}

/** The printing that goes on. */
export interface GoingOn {
  readonly run: string
  /** The place in the run of the first number that comes out for the first time. */
  readonly from: number
  readonly stock: StockName
  readonly blanks: number
}

/**
 * What going on appends: the ruined labels are void, destroyed, and printed as their next copy. Refuses
 * `label-in-use` where a label said to be ruined is stuck on something.
 */
export function decideGoOn(
  { last, ruined }: Jam,
  again: readonly { readonly number: SampleNumber; readonly copies: readonly LabelRecord[] }[],
  { run, from, stock, blanks }: GoingOn,
): Result<EntryDraft[]> {
  const used = again.find(({ copies }) => copies.some(({ fate }) => fate === 'used'))
  if (used)
    return refused(
      'label-in-use',
      `Label ${grouped(used.number)} is in use, so it cannot have been ruined in the printer.`,
      'Scan the last good label again, and count the ruined ones after it.',
      'ruined',
    )
  const resumed = draft('labels.resumed', { run, last, ruined })
  if (again.length === 0) return granted([resumed])
  return granted([
    resumed,
    ...again.flatMap(({ number, copies }) => voidsOf(number, copies)),
    draft('labels.printed', {
      labels: again.map(({ number, copies }): LabelCopy => ({ number, copy: copies.length + 1 })),
      stock,
      blanks,
      goesOn: { run, from },
    }),
  ])
}

function voidsOf(number: SampleNumber, copies: readonly LabelRecord[]): EntryDraft[] {
  const why = { reason: 'jammed', words: '', destroyed: true } as const
  return copies
    .filter(({ fate }) => fate !== 'void')
    .map(({ copy }) => draft('label.voided', { number, copy, ...why }))
}
