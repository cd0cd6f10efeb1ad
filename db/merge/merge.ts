/**
 * Merging: one log out of many, as the union of their entries. What holds of it:
 *
 * 1. idempotent, commutative, associative: the merged entries depend on the set of files alone;
 * 2. an entry is taken in by what it proves itself (`row-proof.ts`), never by what came before it;
 * 3. nothing is dropped: what cannot be taken in is set unproved in the log, or named in the report;
 * 4. a merged log is a station log: it can be verified, rebuilt, exported and merged again;
 * 5. the files read are not changed, and the log written appears whole or not at all.
 */
import { resolve } from 'node:path'
import { granted, type Result } from '../../shared-types/result.ts'
import type { DeskId } from '../../shared-types/sample-number.ts'
import { storageRefusal } from '../storage-refusal.ts'
import { gathered } from './gather.ts'
import { type FileReport, type MergeProgress, type MergeReport, sums } from './report.ts'
import type { Refolded } from '../log/rebuild.ts'
import { beginTarget, type Target } from './target.ts'
import { alsoAnInput, nothingToMerge } from './merge-refusals.ts'

export interface MergeOrder {
  /** The merged log: made anew, or merged into if it is a merged log already. */
  readonly out: string
  readonly files: readonly string[]
  /** The office whose desk signs what is settled in it; null while none has taken it up. */
  readonly office: DeskId | null
}

/** One merge in small steps; whoever runs them may do other work in between, or stop. */
export type MergeSteps = Generator<MergeProgress, Result<MergeReport>>

/**
 * Merges files into a log. Stopped half way (`return()`), or refused, it leaves `out` as it was.
 *
 * Refuses with `not-a-merged-log` if `out` is the log of a station, `nothing-to-merge` if no file can
 * be read, or as the medium does. A file that cannot be read is named in the report.
 */
export function* mergeSteps(order: MergeOrder): MergeSteps {
  if (order.files.some((file) => resolve(file) === resolve(order.out)))
    return alsoAnInput(order.out)
  const begun = beginTarget(order.out, order.office)
  if (!begun.ok) return begun
  const target = begun.value
  let kept = false
  try {
    const merged = yield* mergedInto(target, [...new Set(order.files)])
    if (!merged.ok) return merged
    const finished = target.finish()
    kept = finished.ok
    return finished.ok ? merged : finished
  } catch (error) {
    const refusal = storageRefusal(error)
    if (refusal === null) throw error
    return { ok: false, refusal }
  } finally {
    if (!kept) target.drop()
  }
}

/** The same at one go. */
export function mergeLogs(
  order: MergeOrder,
  progress: (step: MergeProgress) => void = () => undefined,
): Result<MergeReport> {
  const steps = mergeSteps(order)
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done === true) return step.value
    progress(step.value)
  }
}

function* mergedInto(
  target: Target,
  paths: readonly string[],
): Generator<MergeProgress, Result<MergeReport>> {
  const files = (yield* gathered(target, paths)).map(({ report }) => report)
  if (files.every(({ state }) => state === 'refused')) return nothingToMerge(files)
  return granted(reportOf(target, files, yield* folded(target, paths.length)))
}

function* folded(target: Target, files: number): Generator<MergeProgress, Refolded | null> {
  if (!target.changed) return null
  const entries = target.entries()
  const folding = target.fold()
  for (let step = folding.next(); ; step = folding.next()) {
    if (step.done === true) return step.value
    const done = files * (1 + step.value / entries)
    if (step.value % 500 === 0) yield { doing: 'folding', file: null, done, total: 2 * files }
  }
}

function reportOf(
  target: Target,
  files: readonly FileReport[],
  folded: Refolded | null,
): MergeReport {
  const [entries, desks] = [target.entries(), target.desks().length]
  return { ...sums(files), entries, desks, notUnderstood: folded?.notUnderstood ?? 0 }
}
