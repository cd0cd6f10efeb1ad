/** Looking a merged record through for what is in dispute. A season takes a while: that is done aside. */
import { createHash } from 'node:crypto'
import { Worker } from 'node:worker_threads'
import { type ReadableLog, WritableLog } from '../../db/connection.ts'
import { latestFormat } from '../../db/migrations/list.ts'
import { countEntries } from '../../db/log/read-entries.ts'
import { settlements } from '../../db/read/disputes.ts'
import type { DiscrepancyKind } from '../../shared-types/discrepancy.ts'
import type { Discrepancy } from '../station/discrepancy/discrepancy.ts'
import { discrepanciesIn } from './discrepancy-evidence.ts'
import { lookThroughFile } from './look-through.ts'

/** The same evidence is the same discrepancy, at whatever office it is found. */
export function discrepancyId({ kind, evidence }: Discrepancy): string {
  return createHash('sha256')
    .update(JSON.stringify([kind, ...evidence]))
    .digest('hex')
}

export type DiscrepanciesById = ReadonlyMap<string, Discrepancy>

interface Search {
  /** The entries it looked through, without the settlements. */
  readonly entries: number
  readonly byId: Promise<DiscrepanciesById>
}

const searches = new WeakMap<ReadableLog, Search>()

/** Everything in dispute; looked for anew only when entries other than settlements came. */
export function discrepanciesFound(log: ReadableLog): Promise<DiscrepanciesById> {
  const entries = countEntries(log) - settlements(log).length
  const before = searches.get(log)
  if (before?.entries === entries) return before.byId
  const byId = search(log, entries).then(
    (found) => new Map(found.map((each) => [discrepancyId(each), each])),
  )
  searches.set(log, { entries, byId })
  return byId
}

/** So many entries are looked through before a thread has begun. */
const worthAThread = 50_000

async function search(log: ReadableLog, entries: number): Promise<readonly Discrepancy[]> {
  const isOurs = log instanceof WritableLog && log.format === latestFormat
  return isOurs && entries > worthAThread ? lookThrough(log.path, entries) : discrepanciesIn(log)
}

/** Beside this file, by the name it has as a source or as the bundle of it. */
const worker = new URL(
  import.meta.url.endsWith('.ts') ? './look-worker.ts' : './look-worker.js',
  import.meta.url,
)

/** Looks a log of ours through, in a thread if it is long and one can be had. */
export async function lookThrough(path: string, entries: number): Promise<readonly Discrepancy[]> {
  const found = entries > worthAThread ? await inThread(path) : null
  return found ?? (await lookThroughFile(path))
}

function inThread(path: string): Promise<readonly Discrepancy[] | null> {
  return new Promise((resolve) => {
    let found: readonly Discrepancy[] | null = null
    const thread = new Worker(worker, { workerData: path })
    thread.once('message', (message: readonly Discrepancy[]) => {
      found = message
    })
    // What went wrong shows when it is done here.
    thread.once('error', () => {})
    thread.once('exit', () => resolve(found))
  })
}

/** How many there are of each kind, for the report of a merge. */
export function countsByKind(
  discrepancies: readonly Discrepancy[],
): { kind: DiscrepancyKind; count: number }[] {
  const counts = new Map<DiscrepancyKind, number>()
  for (const { kind } of discrepancies) counts.set(kind, (counts.get(kind) ?? 0) + 1)
  return [...counts].map(([kind, count]) => ({ kind, count }))
}
