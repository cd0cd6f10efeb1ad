/** Merging as a person has it done: in threads where that saves time, and so that it can be stopped. */
import { existsSync, statSync } from 'node:fs'
import { resolve } from 'node:path'
import { setImmediate as aMoment } from 'node:timers/promises'
import type { Result } from '../../shared-types/result.ts'
import { guessedGroups, type MergeWatch, mergeInThreads } from './in-threads.ts'
import { type MergeOrder, mergeSteps } from './merge.ts'
import { alsoAnInput, stopped } from './merge-refusals.ts'
import type { MergeReport } from './report.ts'

/** Files of fewer bytes together are merged before threads have begun. */
const worthThreads = 64 * 1024 * 1024

/**
 * Merges files into a log; refuses as `mergeLogs` does, and `stopped` once `watch.stop` says so. `out` is
 * then as it was. Other work goes on in between.
 */
export async function mergeFiles(
  order: MergeOrder,
  watch: MergeWatch,
): Promise<Result<MergeReport>> {
  const files = [...new Set(order.files)]
  if (files.some((file) => resolve(file) === resolve(order.out))) return alsoAnInput(order.out)
  const groups = guessedGroups(files)
  if (existsSync(order.out) || groups.length < 2 || bytesOf(files) < worthThreads)
    return mergeHere(order, watch)
  try {
    return await mergeInThreads({ ...order, files }, groups, watch)
  } catch {
    // Where threads cannot be had it takes longer, and comes to the same.
    return mergeHere(order, watch)
  }
}

function bytesOf(files: readonly string[]): number {
  return files.reduce(
    (sum, file) => sum + (statSync(file, { throwIfNoEntry: false })?.size ?? 0),
    0,
  )
}

async function mergeHere(order: MergeOrder, { progress, stop }: MergeWatch) {
  const steps = mergeSteps(order)
  for (let count = 0; ; count += 1) {
    const step = steps.next()
    if (step.done === true) return step.value
    progress(step.value)
    if (count % 2 === 0) await aMoment()
    if (Atomics.load(stop, 0) === 0) continue
    const refusal = stopped()
    // Clears the part file away; the merged log stays as it was.
    steps.return(refusal)
    return refusal
  }
}

/** What stops a merge: its first number is set to 1. Threads share it. */
export function stopSign(): Int32Array {
  return new Int32Array(new SharedArrayBuffer(4))
}
