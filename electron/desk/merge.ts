/** Merging at the desk: beside other work, so that every window stays alive. */
import { basename, join } from 'node:path'
import type { MergeOrder } from '../../db/merge/merge.ts'
import { mergeFiles, stopSign } from '../../db/merge/merge-files.ts'
import type { MergeProgress, MergeReport } from '../../db/merge/report.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import { nobodysDesk } from '../../shared-types/sample-number.ts'
import type { MergeReportView, MergeStateView, MergeView } from '../../shared-types/views/merge.ts'
import type { ShelfCall, ShelfHandlers } from './call.ts'
import { countsByKind, lookThrough } from './discrepancy-search.ts'
import { mergePlaces, pathsAt } from './merge-places.ts'
import type { Shelf } from './shelf.ts'

const ending = '.stationlog'

type Tell = ShelfCall['tell']

/** One merge at a desk, from its beginning until the next is begun. */
class MergeJob {
  state: MergeStateView = { is: 'idle' }
  #stop: Int32Array | null = null

  get isRunning(): boolean {
    return this.#stop !== null
  }

  begin(order: MergeOrder, tell: Tell): void {
    this.#stop = stopSign()
    const out = basename(order.out)
    this.state = { is: 'running', out, doing: 'reading', file: null, share: 0 }
    void this.#run(order, this.#stop, tell)
  }

  async #run(order: MergeOrder, stop: Int32Array, tell: Tell): Promise<void> {
    const out = basename(order.out)
    let steps = 0
    const progress = ({ doing, file, done, total }: MergeProgress) => {
      this.state = { is: 'running', out, doing, file, share: Math.min(1, done / total) }
      // A window that is told a hundred times a second only gets slower.
      if (steps % 20 === 0) tell(['merge'])
      steps += 1
    }
    try {
      this.state = await ended(order.out, await mergeFiles(order, { progress, stop }))
    } catch {
      this.state = { is: 'refused', out, refusal: fault }
    }
    this.#stop = null
    tell(['merge', 'office'])
  }

  /** The part file is cleared away; the merged log stays as it was. */
  cancel(): void {
    if (this.#stop) Atomics.store(this.#stop, 0, 1)
  }
}

const fault = {
  code: 'merge-failed',
  say: 'The merge met a fault of its own. Nothing was changed.',
  next: 'Merge again; if it happens again, leave out one file after another to find which it is.',
}

async function ended(out: string, result: Result<MergeReport>): Promise<MergeStateView> {
  if (result.ok) return { is: 'done', report: await reportView(out, result.value) }
  if (result.refusal.code === 'stopped') return { is: 'stopped', out: basename(out) }
  return { is: 'refused', out: basename(out), refusal: result.refusal }
}

async function reportView(out: string, report: MergeReport): Promise<MergeReportView> {
  const inDispute = countsByKind(await lookThrough(out, report.entries))
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
    job.begin({ out, files: paths, office: null }, tell)
    tell(['merge'])
    return granted({})
  },
  'merge.cancel': ({ shelf, tell }) => {
    jobAt(shelf).cancel()
    tell(['merge'])
    return granted({})
  },
} satisfies Partial<ShelfHandlers>
