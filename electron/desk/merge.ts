/** Merging at the desk: in small steps between other work, so that every window stays alive. */
import { basename, join } from 'node:path'
import { setImmediate as aMoment } from 'node:timers/promises'
import { type MergeSteps, mergeSteps } from '../../db/merge/merge.ts'
import type { MergeReport } from '../../db/merge/report.ts'
import { readLog } from '../../db/log/read-log.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import { nobodysDesk } from '../../shared-types/sample-number.ts'
import type { MergeReportView, MergeStateView, MergeView } from '../../shared-types/views/merge.ts'
import type { ShelfCall, ShelfHandlers } from './call.ts'
import { countsInDispute } from './discrepancies.ts'
import { mergePlaces, pathsAt } from './merge-places.ts'
import type { Shelf } from './shelf.ts'

const ending = '.stationlog'

type Tell = ShelfCall['tell']

/** One merge at a desk, from its beginning until the next is begun. */
class MergeJob {
  state: MergeStateView = { is: 'idle' }
  #steps: MergeSteps | null = null

  get isRunning(): boolean {
    return this.#steps !== null
  }

  begin(out: string, steps: MergeSteps, tell: Tell): void {
    this.#steps = steps
    this.state = { is: 'running', out: basename(out), doing: 'reading', file: null, share: 0 }
    void this.#run(out, steps, tell)
  }

  async #run(out: string, steps: MergeSteps, tell: Tell): Promise<void> {
    try {
      this.state = await this.#end(out, steps, tell)
    } catch {
      this.state = { is: 'refused', out: basename(out), refusal: fault }
    }
    this.#steps = null
    tell(['merge', 'office'])
  }

  async #end(out: string, steps: MergeSteps, tell: Tell): Promise<MergeStateView> {
    const name = basename(out)
    for (let count = 0; this.#steps === steps; count += 1) {
      const step = steps.next()
      if (step.done === true) return ended(out, step.value)
      const { doing, file, done, total } = step.value
      this.state = { is: 'running', out: name, doing, file, share: done / total }
      // A window that is told a hundred times a second only gets slower.
      if (count % 20 === 0) tell(['merge'])
      if (count % 2 === 0) await aMoment()
    }
    return { is: 'stopped', out: name }
  }

  cancel(): void {
    const steps = this.#steps
    if (steps === null) return
    this.#steps = null
    // Clears the part file away; the merged log stays as it was.
    steps.return({ ok: false, refusal: fault })
  }
}

const fault = {
  code: 'merge-failed',
  say: 'The merge met a fault of its own. Nothing was changed.',
  next: 'Merge again; if it happens again, leave out one file after another to find which it is.',
}

function ended(out: string, result: Result<MergeReport>): MergeStateView {
  return result.ok
    ? { is: 'done', report: reportView(out, result.value) }
    : { is: 'refused', out: basename(out), refusal: result.refusal }
}

function reportView(out: string, report: MergeReport): MergeReportView {
  const log = readLog(out)
  const inDispute = log.ok ? countsInDispute(log.value) : []
  if (log.ok) log.value.close()
  return {
    ...report,
    out: basename(out),
    inDispute,
    files: report.files.map((file) =>
      file.state === 'refused'
        ? file
        : { ...file, altered: [...file.altered], desks: [...file.desks] },
    ),
  }
}

const jobs = new WeakMap<Shelf, MergeJob>()

function jobAt(shelf: Shelf): MergeJob {
  const job = jobs.get(shelf) ?? new MergeJob()
  jobs.set(shelf, job)
  return job
}

function mergeView({ shelf, deps }: ShelfCall): MergeView {
  const { state } = jobAt(shelf)
  // Looking through the folder reads every log in it: not while one of them is being made.
  if (state.is === 'running') return { places: [], merged: [], state }
  const merged = shelf
    .list()
    .filter(({ office }) => office)
    .map(({ file, desk }) => ({ file, taken: desk !== nobodysDesk }))
  const outs = new Set(merged.map(({ file }) => file))
  const places = mergePlaces(deps.folder, shelf.offered)
    .map((place) =>
      place.place === 'shelf'
        ? { ...place, files: place.files.filter(({ file }) => !outs.has(file)) }
        : place,
    )
    .filter(({ files }) => files.length > 0)
  return { places, merged, state }
}

export const mergeCalls = {
  'merge.look': (call) => granted(mergeView(call)),
  'merge.begin': ({ shelf, deps, tell }, { place, files, into }) => {
    const job = jobAt(shelf)
    if (job.isRunning)
      return refused('merging-already', 'A merge is under way.', 'Wait for it, or cancel it.')
    const paths = pathsAt(deps.folder, shelf.offered, place, files)
    if (paths === null)
      return refused(
        'files-gone',
        'One of these files is no longer there.',
        'Look whether the stick is plugged in, and choose the files again.',
        'files',
      )
    const out = join(deps.folder, into + ending)
    if (shelf.openFile === basename(out)) shelf.shut()
    job.begin(out, mergeSteps({ out, files: paths, office: null }), tell)
    tell(['merge'])
    return granted({})
  },
  'merge.cancel': ({ shelf, tell }) => {
    jobAt(shelf).cancel()
    tell(['merge'])
    return granted({})
  },
} satisfies Partial<ShelfHandlers>
